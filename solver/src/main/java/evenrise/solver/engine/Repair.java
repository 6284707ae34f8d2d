package evenrise.solver.engine;

/**
 * The temperature of broken rules, in charge units: from where a place or two more may be broken on the way down to where
 * none may, in cycles that grow longer until a plan keeps every rule.
 */
final class Repair {
    private static final double HOT = 5_000;
    private static final double COLD = 50;
    private static final int FEWEST_MOVES = 5_000;
    private static final int MOVES_PER_LOAD = 40;

    private double cycle;
    private double move;
    private double temperature = HOT;

    Repair(Plant plant) {
        cycle = FEWEST_MOVES + (double) MOVES_PER_LOAD * plant.loadCount();
    }

    void nextMove() {
        if (++move > cycle) {
            move = 0;
            cycle *= 2;
        }
        temperature = HOT * Math.pow(COLD / HOT, move / cycle);
    }

    double temperature() {
        return temperature;
    }

    /** How much less the objective counts meanwhile: what is being mended must not be held back by it. */
    double leniency() {
        return temperature / COLD;
    }
}
