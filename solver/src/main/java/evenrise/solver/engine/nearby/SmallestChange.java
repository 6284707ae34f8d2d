package evenrise.solver.engine.nearby;

import evenrise.solver.engine.move.DraftMove;
import evenrise.solver.engine.move.Neighbourhood;
import evenrise.solver.engine.move.PlaceExchange;
import evenrise.solver.engine.move.Targets;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import java.util.SplittableRandom;

/**
 * One load takes another spot, free or in exchange with whoever sits there, or another output, free or in exchange: the
 * least that can be changed, with no eye to whether both are alike. A load that leaves the reach of its board goes to a
 * free output of one that reaches its new panel.
 */
final class SmallestChange implements Neighbourhood {
    private static final int TRIES = 8;

    @Override
    public boolean draw(PlanSums sums, Targets targets, SplittableRandom random, DraftMove draft) {
        int load = targets.load(random);
        Place from = sums.placeOf(load);
        if (from == null) {
            return false;
        }
        boolean stays = random.nextInt(3) != 0;
        boolean onlyFree = random.nextBoolean();
        CompiledProject compiled = sums.compiled;
        for (int i = 0; i < TRIES; i++) {
            draft.clear();
            int panel = stays ? from.panel() : random.nextInt(compiled.panelCount);
            int slot = 1 + random.nextInt(compiled.firstSlot[panel + 1] - compiled.firstSlot[panel]);
            Place to = compiled.placeAt[panel][slot][compiled.poles[load]];
            boolean differs = to != null && (to.phaseMask() != from.phaseMask() || to.panel() != from.panel());
            if (differs
                    && compiled.mayTake(load, to)
                    && !(onlyFree && isTaken(sums, load, to))
                    && PlaceExchange.swap(sums, load, from, to, draft)
                    && land(sums, load, to, random, draft)
                    && draft.keepsRanges()) {
                return true;
            }
        }
        return false;
    }

    private static boolean isTaken(PlanSums sums, int load, Place to) {
        for (int slot : to.slots()) {
            int occupant = sums.loadInSlot(slot);
            if (occupant != CompiledProject.NONE && occupant != load) {
                return true;
            }
        }
        return false;
    }

    private static boolean land(PlanSums sums, int load, Place to, SplittableRandom random, DraftMove draft) {
        CompiledProject compiled = sums.compiled;
        Output output = sums.outputOf(load);
        if (output == null || compiled.reach[output.board()].get(to.panel())) {
            return true;
        }
        int[] near = compiled.nearbyBoards[load];
        for (int i = 0; i < TRIES && near.length > 0; i++) {
            int board = near[random.nextInt(near.length)];
            if (compiled.reach[board].get(to.panel())) {
                Output free = compiled.output(board, random.nextInt(compiled.outputCount(board)));
                if (sums.loadOnOutput(free.index()) == CompiledProject.NONE) {
                    draft.wire(load, free);
                    return true;
                }
            }
        }
        return false;
    }
}
