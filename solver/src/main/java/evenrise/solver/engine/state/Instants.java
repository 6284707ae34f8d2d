package evenrise.solver.engine.state;

import java.util.Arrays;

/**
 * The switch-on instants that any setting of the boards can give, numbered in order of time. Either all multiples of one
 * grid interval, or, where that grid would be too fine, the reachable instants alone.
 */
public final class Instants {
    private static final int LARGEST_GRID = 1 << 16;

    private final long gridMicros;
    private final long[] micros;

    private Instants(long gridMicros, long[] micros) {
        this.gridMicros = gridMicros;
        this.micros = micros;
    }

    /** All multiples of {@code gridMicros} up to {@code latestMicros}, if they are few enough to keep. */
    static boolean fitGrid(long gridMicros, long latestMicros) {
        return latestMicros / gridMicros < LARGEST_GRID;
    }

    static Instants grid(long gridMicros, long latestMicros) {
        int count = Math.toIntExact(latestMicros / gridMicros) + 1;
        long[] micros = new long[count];
        Arrays.setAll(micros, i -> i * gridMicros);
        return new Instants(gridMicros, micros);
    }

    static Instants of(long[] sortedDistinctMicros) {
        return new Instants(0, sortedDistinctMicros);
    }

    /** Whether instants are equally spaced, so that a decay depends on the difference of two indexes alone. */
    public boolean isGrid() {
        return gridMicros > 0;
    }

    public int size() {
        return micros.length;
    }

    public long micros(int index) {
        return micros[index];
    }

    /** On a grid: how many intervals it takes until so much time is over, but for what order forgives. */
    public int countUntil(long micros) {
        return (int) Math.max(0, -Math.floorDiv(Charges.TIME_TOLERANCE_MICROS - micros, gridMicros));
    }

    /** Position of a time that some setting of the boards gives. */
    public int indexOf(long time) {
        return gridMicros > 0 ? (int) (time / gridMicros) : Arrays.binarySearch(micros, time);
    }
}
