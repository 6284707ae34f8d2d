package evenrise.solver.engine.search;

import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.engine.start.FirstPlan;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanMapper;
import evenrise.solver.engine.state.PlanSnapshot;
import evenrise.solver.engine.state.PlanSums;
import java.util.Random;
import java.util.function.DoubleSupplier;

/**
 * A peer for the benchmark: annealing as anybody would write it in an afternoon, on the objective itself, with moves inside
 * a panel (two breakers change places, two loads change outputs, a board is set anew) and a temperature that falls
 * geometrically. It starts where the engine starts and shares its sums, so a difference is one of method, not of code.
 */
public final class PlainAnnealing {
    private static final double HOT_SHARE = 0.01;
    private static final double COLD_SHARE = 1e-5;
    private static final int BATCH = 64;

    private final CompiledProject compiled;
    private final Random random;
    private final PlainMoves draws;
    private final PlanSums now;
    private PlanSnapshot best;
    private long bestHard = Long.MAX_VALUE;
    private long bestSoft = Long.MAX_VALUE;
    private long moves;

    public PlainAnnealing(Project project, long seed) {
        compiled = new CompiledProject(project);
        random = new Random(seed);
        draws = new PlainMoves(compiled, false);
        now = FirstPlan.build(compiled);
        keepIfBest();
    }

    public long moves() {
        return moves;
    }

    /**
     * The best plan, fewest broken rules first.
     *
     * @param used which part of the budget is used by now
     */
    public Plan run(DoubleSupplier used) {
        double start = used.getAsDouble();
        double hot = HOT_SHARE * now.objectiveMilliAmps();
        double temperature = hot;
        double energy = energy();
        while (true) {
            if (moves % BATCH == 0) {
                double part = (used.getAsDouble() - start) / (1 - start);
                if (part >= 1) {
                    return new PlanMapper(compiled).toPlan(best);
                }
                temperature = hot * Math.pow(COLD_SHARE / HOT_SHARE, part);
            }
            moves++;
            PlainMove move = draws.draw(now, random);
            move.make().accept(now);
            now.settle();
            double next = energy();
            if (next <= energy || random.nextDouble() < Math.exp((energy - next) / temperature)) {
                energy = next;
                keepIfBest();
            } else {
                move.undo().accept(now);
                now.settle();
            }
        }
    }

    private double energy() {
        return now.objectiveMilliAmps() + (double) now.hardCharge();
    }

    private void keepIfBest() {
        long hard = now.hardCharge();
        long soft = now.objectiveMilliAmps();
        if (hard < bestHard || hard == bestHard && soft < bestSoft) {
            bestHard = hard;
            bestSoft = soft;
            best = now.snapshot();
        }
    }
}
