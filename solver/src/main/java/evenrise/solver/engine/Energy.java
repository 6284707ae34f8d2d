package evenrise.solver.engine;

/**
 * What the search goes down on: the objective with the profile's norm in the place of its peak, and broken rules at a
 * price. A peak is a plateau to most moves; the norm has a slope everywhere.
 */
final class Energy {
    private static final int DOUBLINGS = Integer.getInteger("dbl", 5);
    private static final double HARD = Double.parseDouble(System.getProperty("hardw", "0.001"));

    private Energy() {}

    /** In ampere-equivalents. */
    static double of(Situation situation) {
        double norm = situation.supplyProfile().norm(DOUBLINGS) / situation.plant.envelopes.unitsPerAmp;
        return situation.objectiveWith(norm) + HARD * situation.hardCharge();
    }
}
