package evenrise.solver.engine.move;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import evenrise.solver.engine.state.Setting;
import java.util.SplittableRandom;

/** A load that has found no room yet is put where there is some, or where another one makes way for it. */
public final class Insertion implements Neighbourhood {
    private final SpotFinder free;

    public Insertion(PlanSums sums) {
        free = new SpotFinder(sums);
    }

    @Override
    public boolean draw(PlanSums sums, Targets targets, SplittableRandom random, DraftMove draft) {
        CompiledProject compiled = sums.compiled;
        if (sums.unassigned() == 0) {
            return false;
        }
        int load = sums.unassignedLoad(random.nextInt(sums.unassigned()));
        Output output = sums.outputOf(load);
        if (compiled.needsOutput[load] && output == null) {
            int[] boards = compiled.nearbyBoards[load];
            if (boards.length == 0) {
                return false;
            }
            int board = boards[random.nextInt(boards.length)];
            output = compiled.output(board, random.nextInt(compiled.outputCount(board)));
            int occupant = sums.loadOnOutput(output.index());
            if (occupant != CompiledProject.NONE) {
                draft.wire(occupant, null);
            }
            draft.wire(load, output);
            timeAtRandom(compiled, load, output, random, draft);
        }
        if (sums.placeOf(load) == null) {
            int panel = panel(sums, load, output, random);
            free.clear();
            Place place = panel == CompiledProject.NONE ? null : free.take(load, panel, random);
            if (place == null && panel != CompiledProject.NONE) {
                place = makeWay(sums, load, panel, random, draft);
            }
            if (place == null) {
                return false;
            }
            draft.place(load, place);
        }
        return draft.keepsRanges();
    }

    /** Where an output has a time of its own, any of those offered. */
    static void timeAtRandom(
            CompiledProject compiled, int load, Output output, SplittableRandom random, DraftMove draft) {
        Setting[] times = compiled.times[output.board()];
        if (times != null) {
            draft.time(load, times[random.nextInt(times.length)]);
        }
    }

    private static int panel(PlanSums sums, int load, Output output, SplittableRandom random) {
        CompiledProject compiled = sums.compiled;
        int taken = panelOfBundle(sums, load);
        if (taken != CompiledProject.NONE) {
            return taken;
        }
        int start = random.nextInt(compiled.panelCount);
        for (int i = 0; i < compiled.panelCount; i++) {
            int panel = (start + i) % compiled.panelCount;
            if (compiled.allowedPanels[load].get(panel)
                    && (output == null || compiled.reach[output.board()].get(panel))) {
                return panel;
            }
        }
        return CompiledProject.NONE;
    }

    /** Where another of those behind the same contactor sits, or {@link CompiledProject#NONE}. */
    private static int panelOfBundle(PlanSums sums, int load) {
        for (int other : sums.compiled.bundle[sums.compiled.leadOf[load]]) {
            if (other != load && sums.placeOf(other) != null) {
                return sums.placeOf(other).panel();
            }
        }
        return CompiledProject.NONE;
    }

    private static Place makeWay(PlanSums sums, int load, int panel, SplittableRandom random, DraftMove draft) {
        CompiledProject compiled = sums.compiled;
        int slot = 1 + random.nextInt(compiled.firstSlot[panel + 1] - compiled.firstSlot[panel]);
        Place place = compiled.placeAt[panel][slot][compiled.poles[load]];
        if (place == null || !compiled.mayTake(load, place)) {
            return null;
        }
        for (int taken : place.slots()) {
            int occupant = sums.loadInSlot(taken);
            if (occupant != CompiledProject.NONE && compiled.fixedSlot[occupant] != CompiledProject.NONE) {
                return null;
            }
            if (occupant != CompiledProject.NONE) {
                draft.place(occupant, null);
            }
        }
        return place;
    }
}
