package evenrise.solver.exact;

import com.google.ortools.sat.SatParameters;
import evenrise.solver.engine.Budget;

/** How hard the exact model may be tried: by the clock with several workers, or reproducibly with one. */
final class ExactEffort {
    /** With counted moves, so much of the solver's own measure of work a move. */
    private static final double WORK_A_MOVE = 1.0 / 50_000;

    private static final double MOST_WORK = 10;

    private final int workers;
    private final boolean isReproducible;
    private final long seed;
    private final long endNanos;
    private final ExactEffort whole;
    private double left;

    private ExactEffort(int workers, boolean isReproducible, long seed, double seconds, ExactEffort whole) {
        this.whole = whole;
        this.workers = workers;
        this.isReproducible = isReproducible;
        this.seed = seed;
        this.left = seconds;
        this.endNanos = System.nanoTime() + (long) (seconds * 1e9);
    }

    static ExactEffort seconds(double seconds, int workers, long seed) {
        return new ExactEffort(workers, false, seed, seconds, null);
    }

    /** @param units the solver's own measure of work, about a second each on a usual machine */
    static ExactEffort work(double units, long seed) {
        return new ExactEffort(1, true, seed, units, null);
    }

    /** A small part of a search's budget: of its time, at most so many seconds, or work in step with its moves. */
    static ExactEffort beside(Budget budget, double part, double mostSeconds, long seed, int workers) {
        if (budget instanceof Budget.Time time) {
            return seconds(Math.min(mostSeconds, part * time.limit().toMillis() / 1000.0), workers, seed);
        }
        return work(Math.min(MOST_WORK, ((Budget.Moves) budget).limit() * WORK_A_MOVE), seed);
    }

    /** A part of the whole, as far as it is left, on the same terms. */
    ExactEffort part(double seconds) {
        return new ExactEffort(workers, isReproducible, seed, Math.min(leftNow(), seconds), this);
    }

    void limit(SatParameters.Builder parameters) {
        // The library's own handler of Ctrl-C would take the signal away from the JVM, and with it the best plan.
        parameters
                .setNumWorkers(workers)
                .setRandomSeed((int) seed)
                .setAbsoluteGapLimit(0)
                .setCatchSigintSignal(false);
        if (isReproducible) {
            parameters.setMaxDeterministicTime(Math.max(0, left));
        } else {
            parameters.setMaxTimeInSeconds(Math.max(0, leftNow()));
        }
    }

    void used(double work) {
        left -= work;
        if (whole != null) {
            whole.used(work);
        }
    }

    boolean isUp() {
        return leftNow() <= 0;
    }

    private double leftNow() {
        return isReproducible ? left : (endNanos - System.nanoTime()) / 1e9;
    }
}
