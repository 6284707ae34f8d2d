package evenrise.solver.intake;

/**
 * How a piece is connected.
 *
 * @param poles of each of its breakers; 0 where that is a problem
 * @param loadedPoles by which its power becomes a current in each pole
 * @param breakers that feed one piece together
 */
record Wiring(int poles, int loadedPoles, int breakers) {
    static final Wiring PROBLEM = new Wiring(0, 0, 1);

    static Wiring of(int poles) {
        return new Wiring(poles, poles, 1);
    }
}
