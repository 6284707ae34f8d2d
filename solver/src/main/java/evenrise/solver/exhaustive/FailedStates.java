package evenrise.solver.exhaustive;

import java.util.Arrays;

/**
 * States of a tree that lead nowhere: what is placed, as a row of whole numbers, and what makes it hard to go on. Where no
 * way on was found, none is where each of these is as much or more. Rows are compared whole: what is said here is never a
 * matter of luck. All lies in three arrays, since there are a million of them.
 */
final class FailedStates {
    private static final int LEAST_ROOM = 1 << 10;

    /** Figures of hardship that are kept, 32 MB of them; then all is forgotten, which costs work and nothing else. */
    private static final int MOST_FIGURES = 1 << 22;

    /** What sums of the same currents in another order may differ by. */
    private static final double ROUNDING_AMPS = 1e-9;

    private static final long SPREAD = 0x9E3779B97F4A7C15L;
    private static final int NONE = -1;

    /** Where the row of each place in the table begins; by the row's hash, or one of the next. */
    private int[] table;

    /** Rows, one after another: hash and length, the first hardship, then the row itself. */
    private long[] rows;

    /** Hardships, one after another: the next of the same row, how many figures, then these. */
    private double[] hardships;

    private int rowsEnd;
    private int hardshipsEnd;
    private int size;

    FailedStates() {
        forget();
    }

    private void forget() {
        table = new int[LEAST_ROOM];
        Arrays.fill(table, NONE);
        rows = new long[LEAST_ROOM];
        hardships = new double[LEAST_ROOM];
        rowsEnd = 0;
        hardshipsEnd = 0;
        size = 0;
    }

    int size() {
        return size;
    }

    /**
     * Whether a failure covers the state, which leads nowhere then.
     *
     * @param placed a row, of which the first {@code length} numbers count
     * @param hardship what more of makes it harder, nothing past its end
     */
    boolean covers(long[] placed, int length, double[] hardship) {
        int row = table[place(placed, length, hash(placed, length))];
        if (row == NONE) {
            return false;
        }
        for (int it = (int) rows[row + 1]; it != NONE; it = (int) hardships[it]) {
            if (isNoMore(it, hardship)) {
                return true;
            }
        }
        return false;
    }

    /** Keeps a state that no failure covers and that led nowhere. */
    void add(long[] placed, int length, double[] hardship) {
        if (hardshipsEnd > MOST_FIGURES) {
            forget();
        }
        if (2 * size >= table.length) {
            grow();
        }
        long hash = hash(placed, length);
        int at = place(placed, length, hash);
        if (table[at] == NONE) {
            rows = withRoom(rows, rowsEnd + length + 2);
            table[at] = rowsEnd;
            rows[rowsEnd++] = hash;
            rows[rowsEnd++] = NONE;
            System.arraycopy(placed, 0, rows, rowsEnd, length);
            rowsEnd += length;
            size++;
        }
        hardships = withRoom(hardships, hardshipsEnd + hardship.length + 2);
        int first = hardshipsEnd;
        hardships[hardshipsEnd++] = rows[table[at] + 1];
        hardships[hardshipsEnd++] = hardship.length;
        System.arraycopy(hardship, 0, hardships, hardshipsEnd, hardship.length);
        hardshipsEnd += hardship.length;
        rows[table[at] + 1] = first;
    }

    private static long[] withRoom(long[] array, int length) {
        return length <= array.length ? array : Arrays.copyOf(array, Math.max(length, 2 * array.length));
    }

    private static double[] withRoom(double[] array, int length) {
        return length <= array.length ? array : Arrays.copyOf(array, Math.max(length, 2 * array.length));
    }

    private boolean isNoMore(int failed, double[] hardship) {
        int figures = (int) hardships[failed + 1];
        if (figures > hardship.length) {
            return false;
        }
        for (int i = 0; i < figures; i++) {
            if (hardships[failed + 2 + i] > hardship[i] + ROUNDING_AMPS) {
                return false;
            }
        }
        return true;
    }

    private void grow() {
        int[] before = table;
        table = new int[2 * before.length];
        Arrays.fill(table, NONE);
        for (int row : before) {
            if (row != NONE) {
                int at = (int) (rows[row] >>> 8) & table.length - 1;
                while (table[at] != NONE) {
                    at = at + 1 & table.length - 1;
                }
                table[at] = row;
            }
        }
    }

    /** Ends with its length, so that rows of other lengths are hardly ever compared. */
    private static long hash(long[] placed, int length) {
        long hash = 0;
        for (int i = 0; i < length; i++) {
            hash = (hash ^ placed[i]) * SPREAD;
            hash ^= hash >>> 29;
        }
        return hash << 8 | length;
    }

    private int place(long[] placed, int length, long hash) {
        int at = (int) (hash >>> 8) & table.length - 1;
        while (table[at] != NONE && !isRow(table[at], placed, length, hash)) {
            at = at + 1 & table.length - 1;
        }
        return at;
    }

    private boolean isRow(int row, long[] placed, int length, long hash) {
        return rows[row] == hash && Arrays.equals(rows, row + 2, row + 2 + length, placed, 0, length);
    }
}
