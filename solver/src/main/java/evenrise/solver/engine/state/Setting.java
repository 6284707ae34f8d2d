package evenrise.solver.engine.state;

/**
 * A start delay, a step or a time of an output that a board's type offers.
 *
 * @param index position in the type's list, sorted from short to long
 * @param seconds as the project states it
 * @param micros the same, rounded to the microsecond
 */
public record Setting(int index, double seconds, long micros) {
    static Setting of(int index, double seconds) {
        return new Setting(index, seconds, Math.round(seconds * 1e6));
    }

    /**
     * The offered time next to a wanted one, which may be of another type's; the earlier of equally near, and the first
     * where none is wanted.
     */
    public static Setting nearest(Setting[] offered, Setting wanted) {
        if (wanted == null) {
            return offered[0];
        }
        return wanted.index < offered.length && offered[wanted.index] == wanted
                ? wanted
                : nearest(offered, wanted.micros);
    }

    /** The offered time next to a wanted one; the earlier of equally near. */
    public static Setting nearest(Setting[] offered, long wantedMicros) {
        int low = 0;
        int high = offered.length - 1;
        while (low < high) {
            int middle = low + high >>> 1;
            if (offered[middle].micros < wantedMicros) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        boolean isEarlierNearer =
                low > 0 && wantedMicros - offered[low - 1].micros <= offered[low].micros - wantedMicros;
        return isEarlierNearer ? offered[low - 1] : offered[low];
    }
}
