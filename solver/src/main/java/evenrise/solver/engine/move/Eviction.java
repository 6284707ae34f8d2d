package evenrise.solver.engine.move;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import java.util.SplittableRandom;

/**
 * A load takes a spot or an output whoever holds it; those it turns out are without one until they are put in again. A way
 * through, where everything is too full or too tightly tied for an exchange.
 */
public final class Eviction implements Neighbourhood {
    @Override
    public boolean draw(PlanSums sums, Targets targets, SplittableRandom random, DraftMove draft) {
        CompiledProject compiled = sums.compiled;
        int load = targets.load(random);
        if (random.nextBoolean() || !compiled.needsOutput[load]) {
            return takePlace(sums, load, random, draft);
        }
        return takeOutput(sums, load, random, draft);
    }

    private static boolean takePlace(PlanSums sums, int load, SplittableRandom random, DraftMove draft) {
        CompiledProject compiled = sums.compiled;
        int panel = random.nextInt(compiled.panelCount);
        int slot = 1 + random.nextInt(compiled.firstSlot[panel + 1] - compiled.firstSlot[panel]);
        Place place = compiled.placeAt[panel][slot][compiled.poles[load]];
        if (place == null || place == sums.placeOf(load)) {
            return false;
        }
        for (int taken : place.slots()) {
            int occupant = sums.loadInSlot(taken);
            if (occupant != CompiledProject.NONE && occupant != load) {
                draft.place(occupant, null);
            }
        }
        draft.place(load, place);
        return draft.keepsRanges();
    }

    private static boolean takeOutput(PlanSums sums, int load, SplittableRandom random, DraftMove draft) {
        CompiledProject compiled = sums.compiled;
        int[] near = compiled.nearbyBoards[load];
        if (near.length == 0) {
            return false;
        }
        int board = near[random.nextInt(near.length)];
        Output output = compiled.output(board, random.nextInt(compiled.outputCount(board)));
        int occupant = sums.loadOnOutput(output.index());
        if (occupant == load) {
            return false;
        }
        if (occupant != CompiledProject.NONE) {
            draft.wire(occupant, null);
        }
        draft.wire(load, output);
        Insertion.timeAtRandom(compiled, load, output, random, draft);
        Place place = sums.placeOf(load);
        if (place != null && !compiled.reach[board].get(place.panel())) {
            draft.place(load, null);
        }
        return draft.keepsRanges();
    }
}
