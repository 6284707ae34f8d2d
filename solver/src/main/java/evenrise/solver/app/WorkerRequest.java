package evenrise.solver.app;

import java.util.OptionalInt;

/**
 * This process is to take jobs of others.
 *
 * @param access whom it joins; its own machine may be among them
 * @param port that it listens at; empty for the first usual one that is free
 * @param slots jobs that it runs side by side; empty for one a processor
 * @since 0.1.0
 */
public record WorkerRequest(GridAccess access, OptionalInt port, OptionalInt slots) {}
