package evenrise.solver.engine.search;

import evenrise.solver.engine.state.CompiledProject;

/**
 * The temperature of broken rules, in charge units, in cycles of cooling until a plan keeps every rule. The first plan
 * often lacks little, and heat would break more than that: so the first cycle is short and mild, and each further one
 * longer and hotter, up to where a place or two more may be broken on the way.
 */
final class Repair {
    private static final double MILD = 250;
    private static final double HOT = 5_000;
    private static final double COLD = 50;
    private static final double HOTTER = 5;
    /** Where many rules tie panels, nodes and systems to each other, heat breaks more than it mends. */
    private static final double HOTTER_AMONG_NODES = 1.5;

    private static final int FEWEST_MOVES = 1_250;
    private static final int MOVES_PER_LOAD = 10;

    private final double hotter;
    private double cycle;
    private double move;
    private double hot = MILD;
    private double temperature = MILD;

    Repair(CompiledProject compiled) {
        hotter = compiled.hasFurtherParts ? HOTTER_AMONG_NODES : HOTTER;
        cycle = FEWEST_MOVES + (double) MOVES_PER_LOAD * compiled.loadCount();
    }

    void nextMove() {
        if (++move > cycle) {
            move = 0;
            cycle *= 2;
            hot = Math.min(HOT, hotter * hot);
        }
        temperature = hot * Math.pow(COLD / hot, move / cycle);
    }

    double temperature() {
        return temperature;
    }

    /** How much less the objective counts meanwhile: what is being mended must not be held back by it. */
    double leniency() {
        return temperature / COLD;
    }
}
