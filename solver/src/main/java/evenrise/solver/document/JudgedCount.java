package evenrise.solver.document;

/**
 * How often judges found something.
 *
 * @param of what is counted
 */
public record JudgedCount(String what, int count, String of) {}
