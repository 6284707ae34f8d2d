package evenrise.solver.rework;

/**
 * One output of its own time that is set otherwise afterwards, whose load stays on it.
 *
 * @param seconds from the begin of its board
 */
public record TimeChange(String load, String board, int output, double seconds) {}
