package evenrise.solver.bounds;

/**
 * A part of all plans: those whose first amplifier and whose last load of all come on within these instants of the grid.
 */
record Box(int amplifierFrom, int amplifierTo, int endFrom, int endTo) {

    boolean isPoint() {
        return amplifierFrom == amplifierTo && endFrom == endTo;
    }

    /** The two halves along the longer side. */
    Box[] halves() {
        if (amplifierTo - amplifierFrom >= endTo - endFrom) {
            int middle = (amplifierFrom + amplifierTo) / 2;
            return new Box[] {
                new Box(amplifierFrom, middle, endFrom, endTo), new Box(middle + 1, amplifierTo, endFrom, endTo)
            };
        }
        int middle = (endFrom + endTo) / 2;
        return new Box[] {
            new Box(amplifierFrom, amplifierTo, endFrom, middle), new Box(amplifierFrom, amplifierTo, middle + 1, endTo)
        };
    }
}
