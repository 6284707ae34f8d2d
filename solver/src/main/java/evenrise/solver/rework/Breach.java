package evenrise.solver.rework;

/**
 * Something that a step of the work breaks and that was whole at the start.
 *
 * @param stage from 1
 * @param step of the stage, from 1; 0 for the stage as a whole
 */
public record Breach(int stage, int step, String message) {}
