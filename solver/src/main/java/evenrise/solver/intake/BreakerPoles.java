package evenrise.solver.intake;

/**
 * How a piece is connected.
 *
 * @param poles of each of its breakers; 0 where that is a problem
 * @param loadedPoles by which its power becomes a current in each pole
 * @param breakers that feed one piece together
 */
record BreakerPoles(int poles, int loadedPoles, int breakers) {
    static final BreakerPoles PROBLEM = new BreakerPoles(0, 0, 1);

    static BreakerPoles of(int poles) {
        return new BreakerPoles(poles, poles, 1);
    }
}
