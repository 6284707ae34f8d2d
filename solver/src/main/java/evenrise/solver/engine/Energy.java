package evenrise.solver.engine;

/**
 * What the search goes down on: the objective with the profile's norm in the place of its peak, and broken rules at a
 * price. A peak is a plateau to most moves; the norm has a slope everywhere.
 */
final class Energy {
    private static final double HARD = Double.parseDouble(System.getProperty("hardw", "1"));

    private Energy() {}

    /** In ampere-equivalents. */
    static double of(Situation situation) {
        return situation.objectiveWith(situation.inrushNormAmps()) + HARD * situation.hardCharge();
    }
}
