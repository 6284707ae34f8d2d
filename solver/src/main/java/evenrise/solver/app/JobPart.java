package evenrise.solver.app;

/**
 * One of many things that a job does has come to its end.
 *
 * @param done how many have
 * @param of how many there are
 * @param words what came of it
 * @since 0.1.0
 */
public record JobPart(int done, int of, String name, String words) {}
