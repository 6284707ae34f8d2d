package evenrise.solver.engine.state;

/** Counts by instant, with the first and the last instant whose count is not zero. */
public final class InstantCounts {
    private final int[] counts;
    private int total;
    /** No instant before {@code first} or behind {@code last} has a count; both are tightened when asked for. */
    private int first;

    private int last;

    public InstantCounts(int size) {
        counts = new int[size];
        first = size;
        last = -1;
    }

    public void add(int instant, int sign) {
        counts[instant] += sign;
        total += sign;
        if (sign > 0) {
            first = Math.min(first, instant);
            last = Math.max(last, instant);
        }
    }

    public boolean isEmpty() {
        return total == 0;
    }

    public int count(int instant) {
        return counts[instant];
    }

    /** Only for a tally that is not empty. */
    public int first() {
        while (counts[first] == 0) {
            first++;
        }
        return first;
    }

    /** Only for a tally that is not empty. */
    public int last() {
        while (counts[last] == 0) {
            last--;
        }
        return last;
    }
}
