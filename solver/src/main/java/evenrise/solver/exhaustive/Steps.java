package evenrise.solver.exhaustive;

import java.util.function.BooleanSupplier;

/** Counts the work of a proof, so that the same work proves the same; and asks now and then whether it is still wanted. */
final class Steps {
    private static final int BETWEEN_QUESTIONS = 4_096;

    /** Thrown where no more work is allowed; what was proven by then stands. */
    static final class Used extends RuntimeException {
        private static final long serialVersionUID = 1;

        Used() {
            super("the work allowed is done", null, false, false);
        }
    }

    private final BooleanSupplier isStopped;
    private long left;

    /** @param most steps, each a node of some tree: a fraction of a microsecond to a few */
    Steps(long most, BooleanSupplier isStopped) {
        this.left = most;
        this.isStopped = isStopped;
    }

    /** @throws Used where none is left, or nobody wants any more */
    void one() {
        if (--left < 0 || left % BETWEEN_QUESTIONS == 0 && isStopped.getAsBoolean()) {
            left = Math.min(left, 0);
            throw new Used();
        }
    }
}
