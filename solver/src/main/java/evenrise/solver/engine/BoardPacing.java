package evenrise.solver.engine;

/** Gives one board the start delay and step that break least and then crowd the supply's profile least. */
final class BoardPacing {
    private static final int MOST_SETTINGS = 400;

    private final Situation situation;
    private final Plant plant;

    /** Processing is to be on by then, so that as much of the sequence as can be is left to what follows. */
    private long processingByMicros;

    /** Auxiliary loads are to be on, and processing to be settled, by then. */
    private long readyByMicros;

    /** @param outputs for each board the load that each output will switch */
    BoardPacing(Situation situation, int[][] outputs) {
        this.situation = situation;
        this.plant = situation.plant;
        long settling = 0;
        for (int board : plant.boardOrder) {
            for (int k = 0; k < outputs[board].length; k++) {
                int load = outputs[board][k];
                if (load != Plant.NONE && plant.role[load] == Plant.PROCESSING) {
                    long earliest = plant.startDelays[board][0].micros() + k * plant.steps[board][0].micros();
                    processingByMicros = Math.max(processingByMicros, earliest);
                    settling = Math.max(settling, plant.settleMicros[load]);
                }
            }
        }
        readyByMicros = processingByMicros + settling;
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
                long charge = situation.hardCharge() + dallying();
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

    private long dallying() {
        RoleOrder roles = situation.roles();
        return Charges.late(roles.auxiliaryMayStartMicros() - processingByMicros)
                + Charges.late(roles.amplifiersMayStartMicros() - readyByMicros);
    }
}
