package evenrise.solver.engine;

/** Gives one board the start delay and step that break least and then crowd the supply's profile least. */
final class BoardPacing {
    private static final int MOST_SETTINGS = 400;

    private final Situation situation;
    private final Plant plant;

    BoardPacing(Situation situation) {
        this.situation = situation;
        this.plant = situation.plant;
    }

    void pace(int board) {
        if (situation.groups().loadsOn(board) == 0) {
            return;
        }
        Setting[] delays = plant.startDelays[board];
        Setting[] steps = plant.steps[board];
        int stride = 1 + delays.length * steps.length / MOST_SETTINGS;
        Setting bestDelay = null;
        Setting bestStep = null;
        long leastCharge = Long.MAX_VALUE;
        double leastCrowding = Double.POSITIVE_INFINITY;
        for (Setting step : steps) {
            for (int i = 0; i < delays.length; i += stride) {
                situation.set(board, delays[i], step);
                situation.settle();
                long charge = situation.hardCharge();
                if (charge <= leastCharge) {
                    double crowding = situation.supplyProfile().unevenness();
                    if (charge < leastCharge || crowding < leastCrowding) {
                        leastCharge = charge;
                        leastCrowding = crowding;
                        bestDelay = delays[i];
                        bestStep = step;
                    }
                }
            }
        }
        situation.set(board, bestDelay, bestStep);
        situation.settle();
    }
}
