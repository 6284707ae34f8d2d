package evenrise.solver.document;

/**
 * One figure, setting or load that is another than in an earlier plan.
 *
 * @param what kind of thing
 * @param which of them
 * @param name of a load
 */
public record Difference(String what, String which, String name, String before, String now) {}
