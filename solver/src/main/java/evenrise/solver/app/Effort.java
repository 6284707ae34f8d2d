package evenrise.solver.app;

import evenrise.solver.engine.Budget;
import java.time.Duration;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;

/**
 * How long and how broad a job may work: the one policy of time, moves, seed and threads of every job.
 *
 * @param time wall time of a search; what is found in a time depends on the machine
 * @param moves that each search tries, in the place of a time; the same seed, moves and threads find the same each time
 * @param threads empty for what is usual, see {@link #searches} and {@link #sideBySide}
 * @since 0.1.0
 */
public record Effort(Optional<Duration> time, OptionalLong moves, long seed, OptionalInt threads) {
    public static final int MOST_THREADS = 64;

    private static final Duration USUAL_TIME = Duration.ofSeconds(30);
    private static final int MOST_THREADS_UNASKED = 8;

    /** Thirty seconds, seed 1. */
    public static final Effort USUAL = new Effort(Optional.empty(), OptionalLong.empty(), 1, OptionalInt.empty());

    public Effort {
        if (time.isPresent() && moves.isPresent()) {
            throw new IllegalArgumentException("expected a time or a number of moves, not both");
        }
        if (time.isPresent() && (time.get().isNegative() || time.get().isZero())) {
            throw new IllegalArgumentException("time is " + time.get() + ", expected more than 0");
        }
        if (moves.isPresent() && moves.getAsLong() < 1) {
            throw new IllegalArgumentException("moves is " + moves.getAsLong() + ", expected at least 1");
        }
        if (threads.isPresent() && !isAllowed(threads.getAsInt())) {
            throw new IllegalArgumentException("threads is " + threads.getAsInt() + ", expected 1 to " + MOST_THREADS);
        }
    }

    public static Effort ofTime(Duration time) {
        return new Effort(Optional.of(time), OptionalLong.empty(), 1, OptionalInt.empty());
    }

    public static Effort ofMoves(long moves) {
        return new Effort(Optional.empty(), OptionalLong.of(moves), 1, OptionalInt.empty());
    }

    public Effort withSeed(long value) {
        return new Effort(time, moves, value, threads);
    }

    public Effort withThreads(int value) {
        return new Effort(time, moves, seed, OptionalInt.of(value));
    }

    /** Whether a job may use so many threads. */
    public static boolean isAllowed(int threads) {
        return threads >= 1 && threads <= MOST_THREADS;
    }

    /** Whether nobody said how long. */
    boolean isUnasked() {
        return time.isEmpty() && moves.isEmpty();
    }

    /** Searches that change what is found: unasked, one where moves are counted, else as many as {@link #sideBySide}. */
    public int searches() {
        return threads.orElseGet(() -> moves.isPresent() ? 1 : sideBySide());
    }

    /** Threads that share work and change nothing of what comes out: unasked, one for each processor, at most eight. */
    public int sideBySide() {
        return threads.orElseGet(
                () -> Math.min(MOST_THREADS_UNASKED, Runtime.getRuntime().availableProcessors()));
    }

    Budget budget() {
        return moves.isPresent() ? new Budget.Moves(moves.getAsLong()) : new Budget.Time(time.orElse(USUAL_TIME));
    }
}
