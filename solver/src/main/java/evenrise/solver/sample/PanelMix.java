package evenrise.solver.sample;

/**
 * How many loads of each use one panel has.
 *
 * @param processing 2 to {@value #MOST_PROCESSING}
 * @param auxiliary that hold on an emergency, 1 to {@value #MOST_AUXILIARY}
 * @param displays auxiliary loads that drop, 0 to {@value #MOST_DISPLAYS}
 * @param amplifiers that drop, 1 to {@value #MOST_AMPLIFIERS}
 * @param calls amplifiers that hold
 */
record PanelMix(int alwaysOn, int processing, int auxiliary, int displays, int amplifiers, int calls) {
    static final int MOST_PROCESSING = 5;
    static final int MOST_AUXILIARY = 5;
    static final int MOST_DISPLAYS = 4;
    static final int MOST_AMPLIFIERS = 14;

    /** Splits {@code loads}, 6 to 30, by a draw. */
    static PanelMix of(int loads, SeededDraws draw) {
        int alwaysOn = loads >= 20 ? 2 : loads >= 8 ? 1 : 0;
        int processing = bounded(loads / 6 + draw.whole(-1, 1), 2, MOST_PROCESSING);
        int auxiliary = bounded(loads / 7 + draw.whole(-1, 1), 1, MOST_AUXILIARY);
        int displays = loads >= 14 && draw.chance(0.4) ? draw.whole(2, MOST_DISPLAYS) : 0;
        int calls = loads >= 16 && draw.chance(0.3) ? draw.whole(2, 4) : 0;
        int rest = loads - alwaysOn - processing - auxiliary - displays - calls;
        int amplifiers = Math.min(rest, MOST_AMPLIFIERS);
        return new PanelMix(alwaysOn, processing, auxiliary, displays, amplifiers, calls + rest - amplifiers);
    }

    private static int bounded(int value, int from, int to) {
        return Math.max(from, Math.min(to, value));
    }
}
