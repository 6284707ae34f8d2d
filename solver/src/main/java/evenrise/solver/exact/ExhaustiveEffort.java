package evenrise.solver.exact;

import evenrise.solver.engine.Budget;

/** How long all that could be better may be looked at: most of a time, or counted steps in step with a search's moves. */
final class ExhaustiveEffort {
    private static final double PART_OF_THE_TIME = 0.75;
    private static final long STEPS_A_MOVE = 200;
    private static final long LEAST_STEPS = 4_000_000;
    private static final long MOST_STEPS = 200_000_000;

    private final long endNanos;
    private final long steps;

    ExhaustiveEffort(Budget budget) {
        if (budget instanceof Budget.Time time) {
            endNanos =
                    System.nanoTime() + (long) (PART_OF_THE_TIME * time.limit().toNanos());
            steps = Long.MAX_VALUE;
        } else {
            endNanos = Long.MAX_VALUE;
            long moves = ((Budget.Moves) budget).limit();
            steps = Math.max(LEAST_STEPS, Math.min(MOST_STEPS / STEPS_A_MOVE, moves) * STEPS_A_MOVE);
        }
    }

    /** Of work that may be done, whatever time it takes. */
    long mostSteps() {
        return steps;
    }

    /** Whether a time is over; never where moves are counted. */
    boolean isUp() {
        return endNanos != Long.MAX_VALUE && System.nanoTime() - endNanos > 0;
    }
}
