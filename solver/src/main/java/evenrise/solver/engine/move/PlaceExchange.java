package evenrise.solver.engine.move;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import java.util.SplittableRandom;

/** A load takes another spot that its board reaches; whoever sat there takes the spot it leaves, pole for pole. */
public final class PlaceExchange implements Neighbourhood {
    private static final int TRIES = 4;

    @Override
    public boolean draw(PlanSums sums, Targets targets, SplittableRandom random, DraftMove draft) {
        CompiledProject compiled = sums.compiled;
        int load = targets.load(random);
        Place from = sums.placeOf(load);
        if (from == null) {
            return false;
        }
        Place best = null;
        long least = Long.MAX_VALUE;
        for (int i = 0; i < TRIES; i++) {
            int panel = panel(sums, load, from, random);
            int slot = 1 + random.nextInt(compiled.firstSlot[panel + 1] - compiled.firstSlot[panel]);
            Place to = compiled.placeAt[panel][slot][compiled.poles[load]];
            if (to != null && changesPhases(from, to) && compiled.mayTake(load, to)) {
                long difference = difference(sums, load, to);
                if (difference < least) {
                    least = difference;
                    best = to;
                }
            }
        }
        return best != null && swap(sums, load, from, best, draft) && draft.keepsRanges();
    }

    /** On the same phases of the same panel nothing would change but the wiring; three poles touch all of them anyway. */
    private static boolean changesPhases(Place from, Place to) {
        return from.phaseMask() != to.phaseMask() || from.panel() != to.panel();
    }

    /** How unlike in running current the load is to who sits there: likes can change places without upsetting a balance. */
    private static long difference(PlanSums sums, int load, Place to) {
        CompiledProject compiled = sums.compiled;
        long difference = 0;
        for (int slot : to.slots()) {
            int occupant = sums.loadInSlot(slot);
            long other = occupant == CompiledProject.NONE ? 0 : compiled.currents.runningNano[occupant];
            difference += Math.abs(compiled.currents.runningNano[load] - other);
        }
        return difference;
    }

    private static int panel(PlanSums sums, int load, Place from, SplittableRandom random) {
        CompiledProject compiled = sums.compiled;
        if (random.nextInt(8) != 0) {
            return from.panel();
        }
        Output output = sums.outputOf(load);
        if (output == null) {
            return random.nextInt(compiled.panelCount);
        }
        int[] reached = compiled.reachedPanels[output.board()];
        return reached.length == 0 ? from.panel() : reached[random.nextInt(reached.length)];
    }

    /** Draws the exchange; false where an occupant sticks out of the spot or does not fit into the other. */
    public static boolean swap(PlanSums sums, int load, Place from, Place to, DraftMove draft) {
        CompiledProject compiled = sums.compiled;
        boolean shifts = overlap(from, to);
        int previous = CompiledProject.NONE;
        for (int i = 0; i < to.slots().length; i++) {
            int occupant = sums.loadInSlot(to.slots()[i]);
            if (occupant == CompiledProject.NONE || occupant == load || occupant == previous) {
                continue;
            }
            previous = occupant;
            Place held = sums.placeOf(occupant);
            if (shifts || held.slots()[0] != to.slots()[i] || i + held.poles() > to.poles()) {
                return false;
            }
            int slot = from.slots()[i] - compiled.firstSlot[from.panel()] + 1;
            Place offered = compiled.placeAt[from.panel()][slot][held.poles()];
            if (offered == null || !compiled.mayTake(occupant, offered)) {
                return false;
            }
            draft.place(occupant, offered);
        }
        draft.place(load, to);
        return true;
    }

    private static boolean overlap(Place one, Place other) {
        for (int a : one.slots()) {
            for (int b : other.slots()) {
                if (a == b) {
                    return true;
                }
            }
        }
        return false;
    }
}
