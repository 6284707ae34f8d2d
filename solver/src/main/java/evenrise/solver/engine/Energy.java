package evenrise.solver.engine;

/**
 * What the search goes down on once every hard rule is kept: the objective with the profile's norm in the place of its
 * peak. A peak is a plateau to most moves; the norm has a slope everywhere.
 */
final class Energy {
    private Energy() {}

    /** In ampere-equivalents. */
    static double of(Situation situation) {
        return situation.objectiveWith(situation.inrushNormAmps());
    }
}
