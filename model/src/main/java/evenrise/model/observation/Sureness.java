package evenrise.model.observation;

/** How sure a statement is, by what everything would cost if it were otherwise. */
final class Sureness {
    /**
     * No statement is surer: with the rest something is at work that is none of the explanations which are weighed against
     * each other, such as a step that a surge hides. Set by faults planted anywhere in drawn plants.
     */
    static final double MOST = 0.98;

    private Sureness() {}

    /** @param more how much more everything costs otherwise, in squared standard deviations */
    static double of(double more) {
        return MOST / (1 + Math.exp(-more / 2));
    }
}
