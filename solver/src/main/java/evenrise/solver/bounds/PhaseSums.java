package evenrise.solver.bounds;

import java.util.Arrays;

/**
 * Which sums two phases can carry while the sum of all is known, in whole units: a bit for each pair, a row for each sum of
 * the second phase. What a third phase carries is the rest. With two phases there is one row, and the rest is the second's.
 */
final class PhaseSums {
    private final int phases;
    private final int words;
    private Rows now;
    private Rows next;
    private long total;

    /** Bits by row, and between which words each row has any; outside of these all are 0. */
    private static final class Rows {
        final long[] bits;
        final int[] from;
        final int[] to;

        Rows(int rows, int words) {
            bits = new long[rows * words];
            from = new int[rows];
            to = new int[rows];
            Arrays.fill(from, words);
            Arrays.fill(to, -1);
        }
    }

    /**
     * @param largest sum that matters on any phase
     * @param total of all phases
     */
    PhaseSums(int phases, int largest, long total) {
        this.phases = phases;
        this.words = (largest >> 6) + 1;
        this.now = new Rows(phases > 2 ? largest + 1 : 1, words);
        this.next = new Rows(now.from.length, words);
        this.total = total;
    }

    /**
     * Lets phases carry anything, and the last what is left.
     *
     * @param least that a phase carries; the last may be given less, down to {@code leastOfLast}
     */
    void begin(long least, long leastOfLast, long most) {
        for (int row = 0; row < now.from.length; row++) {
            if (phases == 2 || row >= least && row <= most) {
                long rest = total - row;
                int low = (int) Math.max(0, Math.max(least, rest - most));
                int high = (int) Math.min(words * 64L - 1, Math.min(most, rest - leastOfLast));
                for (int word = low >> 6; low <= high && word <= high >> 6; word++) {
                    now.bits[row * words + word] |= mask(word, low, high);
                }
                if (low <= high) {
                    now.from[row] = low >> 6;
                    now.to[row] = high >> 6;
                }
            }
        }
    }

    /**
     * Puts one more load of {@code units} on {@code poles} phases, in every way or, where phases are still alike, in one.
     *
     * @param most that a phase with the load may carry then
     */
    void place(int poles, int units, long most, boolean inOneWay) {
        clear(next);
        total += (long) poles * units;
        for (int set = 1; set < 1 << phases; set++) {
            if (Integer.bitCount(set) == poles) {
                place((set & 1) != 0, phases == 3 && (set & 2) != 0, set >> (phases - 1) != 0, units, most);
                if (inOneWay) {
                    break;
                }
            }
        }
        Rows before = now;
        now = next;
        next = before;
    }

    boolean isNone() {
        for (int row = 0; row < now.from.length; row++) {
            for (int word = now.from[row]; word <= now.to[row]; word++) {
                if (now.bits[row * words + word] != 0) {
                    return false;
                }
            }
        }
        return true;
    }

    private void clear(Rows rows) {
        for (int row = 0; row < rows.from.length; row++) {
            if (rows.from[row] <= rows.to[row]) {
                Arrays.fill(rows.bits, row * words + rows.from[row], row * words + rows.to[row] + 1, 0);
                rows.from[row] = words;
                rows.to[row] = -1;
            }
        }
    }

    private void place(boolean onFirst, boolean onSecond, boolean onLast, int units, long most) {
        int down = onSecond ? units : 0;
        int along = onFirst ? units : 0;
        int rows = now.from.length;
        long end = onSecond ? Math.min(rows - 1, most) : rows - 1;
        for (int row = down; row <= end; row++) {
            long low = onLast ? Math.max(0, total - row - most) : 0;
            long high = Math.min(words * 64L - 1, onFirst ? most : Long.MAX_VALUE);
            if (low <= high) {
                shift(row - down, row, along, (int) low, (int) high);
            }
        }
    }

    /** Adds a row of what was, moved along by some bits, to one of what will be, as far as it then lies within bounds. */
    private void shift(int source, int target, int along, int low, int high) {
        int wordsAlong = along >> 6;
        int bitsAlong = along & 63;
        int first = Math.max(low >> 6, now.from[source] + wordsAlong);
        int last = Math.min(high >> 6, now.to[source] + wordsAlong + 1);
        if (now.to[source] < 0 || first > last) {
            return;
        }
        long[] from = now.bits;
        long[] to = next.bits;
        for (int word = first; word <= last; word++) {
            int at = word - wordsAlong;
            long moved = at < words ? from[source * words + at] << bitsAlong : 0;
            if (bitsAlong > 0 && at > 0) {
                moved |= from[source * words + at - 1] >>> (64 - bitsAlong);
            }
            to[target * words + word] |= word == low >> 6 || word == high >> 6 ? moved & mask(word, low, high) : moved;
        }
        next.from[target] = Math.min(next.from[target], first);
        next.to[target] = Math.max(next.to[target], last);
    }

    private static long mask(int word, int low, int high) {
        long mask = -1L;
        if (word == low >> 6) {
            mask &= -1L << (low & 63);
        }
        if (word == high >> 6) {
            mask &= -1L >>> (63 - (high & 63));
        }
        return mask;
    }
}
