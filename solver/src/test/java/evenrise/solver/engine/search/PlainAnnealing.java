package evenrise.solver.engine.search;

import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.engine.start.FirstPlan;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanMapper;
import evenrise.solver.engine.state.PlanSnapshot;
import evenrise.solver.engine.state.PlanSums;
import evenrise.solver.engine.state.Setting;
import java.util.Random;

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
    private final PlanSums now;
    private PlanSnapshot best;
    private long bestHard = Long.MAX_VALUE;
    private long bestSoft = Long.MAX_VALUE;
    private long moves;

    public PlainAnnealing(Project project, long seed) {
        compiled = new CompiledProject(project);
        random = new Random(seed);
        now = FirstPlan.build(compiled);
        keepIfBest();
    }

    public long moves() {
        return moves;
    }

    /** The best plan after {@code seconds} of wall time, fewest broken rules first. */
    public Plan run(double seconds) {
        long start = System.nanoTime();
        double hot = HOT_SHARE * now.objectiveMilliAmps();
        double temperature = hot;
        double energy = energy();
        while (true) {
            if (moves % BATCH == 0) {
                double used = (System.nanoTime() - start) / (seconds * 1e9);
                if (used >= 1) {
                    return new PlanMapper(compiled).toPlan(best);
                }
                temperature = hot * Math.pow(COLD_SHARE / HOT_SHARE, used);
            }
            moves++;
            Runnable undo = change();
            now.settle();
            double next = energy();
            if (next <= energy || random.nextDouble() < Math.exp((energy - next) / temperature)) {
                energy = next;
                keepIfBest();
            } else {
                undo.run();
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

    /** Draws a change into the sums and gives what takes it back. */
    private Runnable change() {
        return switch (random.nextInt(3)) {
            case 0 -> place();
            case 1 -> output();
            default -> setting();
        };
    }

    private Runnable place() {
        int load = random.nextInt(compiled.loadCount());
        Place from = now.placeOf(load);
        if (from == null) {
            return () -> {};
        }
        Place[][] slots = compiled.placeAt[from.panel()];
        Place to = slots[random.nextInt(slots.length)][compiled.poles[load]];
        if (to == null || !compiled.mayTake(load, to)) {
            return () -> {};
        }
        int other = CompiledProject.NONE;
        for (int slot : to.slots()) {
            int sits = now.loadInSlot(slot);
            if (sits != CompiledProject.NONE && now.placeOf(sits) != to) {
                return () -> {};
            }
            other = sits == CompiledProject.NONE ? other : sits;
        }
        if (other == load || other != CompiledProject.NONE && !compiled.mayTake(other, from)) {
            return () -> {};
        }
        int swapped = other;
        now.place(load, to);
        if (swapped != CompiledProject.NONE) {
            now.place(swapped, from);
        }
        return () -> {
            now.place(load, from);
            if (swapped != CompiledProject.NONE) {
                now.place(swapped, to);
            }
        };
    }

    /** Among the outputs of boards in one panel. */
    private Runnable output() {
        int load = random.nextInt(compiled.loadCount());
        Output from = now.outputOf(load);
        if (from == null) {
            return () -> {};
        }
        int board = random.nextInt(compiled.boardCount);
        for (int tries = 0; compiled.boardPanel[board] != compiled.boardPanel[from.board()] && tries < 1000; tries++) {
            board = random.nextInt(compiled.boardCount);
        }
        Output to = compiled.output(board, random.nextInt(compiled.outputCount(board)));
        int other = now.loadOnOutput(to.index());
        if (to == from
                || compiled.boardPanel[board] != compiled.boardPanel[from.board()]
                || !compiled.mayUse(load, to)
                || other != CompiledProject.NONE && !compiled.mayUse(other, from)) {
            return () -> {};
        }
        now.wire(load, to);
        if (other != CompiledProject.NONE) {
            now.wire(other, from);
        }
        return () -> {
            now.wire(load, from);
            if (other != CompiledProject.NONE) {
                now.wire(other, to);
            }
        };
    }

    private Runnable setting() {
        int board = random.nextInt(compiled.boardCount);
        Setting delay = now.clock().startDelay(board);
        Setting step = now.clock().step(board);
        boolean isDelay = random.nextBoolean();
        Setting[] offered = isDelay ? compiled.startDelays[board] : compiled.steps[board];
        Setting next = offered[random.nextInt(offered.length)];
        now.set(board, isDelay ? next : delay, isDelay ? step : next);
        return () -> now.set(board, delay, step);
    }
}
