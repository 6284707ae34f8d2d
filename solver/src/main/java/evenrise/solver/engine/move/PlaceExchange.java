package evenrise.solver.engine.move;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.NodeCurrents;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import java.util.SplittableRandom;

/** A load takes another spot that its board reaches; whoever sat there takes the spot it leaves, pole for pole. */
public final class PlaceExchange implements Neighbourhood {
    private static final int TRIES = 4;
    /** One draw in so many, where panels stand among other nodes, looks for what levels two phases. */
    private static final int LEVELLING = 3;

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
        boolean levels = compiled.hasFurtherParts && random.nextInt(LEVELLING) == 0;
        for (int i = 0; i < TRIES; i++) {
            int panel = levels ? from.panel() : panel(sums, load, from, random);
            int slot = 1 + random.nextInt(compiled.firstSlot[panel + 1] - compiled.firstSlot[panel]);
            Place to = compiled.placeAt[panel][slot][compiled.poles[load]];
            if (to != null && changes(compiled, load, from, to) && compiled.mayTake(load, to)) {
                long difference = levels ? imbalance(sums, load, from, to) : difference(sums, load, to);
                if (difference < least) {
                    least = difference;
                    best = to;
                }
            }
        }
        if (best == null) {
            return false;
        }
        boolean leaves = best.panel() != from.panel();
        if (leaves && !bringBundle(sums, load, best.panel(), random, draft)) {
            return false;
        }
        // Each exchange knows the plan as it is, and nothing of those drawn before it.
        return swap(sums, load, from, best, draft) && draft.keepsRanges() && (!leaves || draft.keepsRoom());
    }

    /** Whoever is behind the same contactor takes spots of the other panel, too; false where that leads nowhere. */
    private static boolean bringBundle(PlanSums sums, int load, int panel, SplittableRandom random, DraftMove draft) {
        CompiledProject compiled = sums.compiled;
        int[] bundle = compiled.bundle[compiled.leadOf[load]];
        for (int other : bundle) {
            if (other != load) {
                Place from = sums.placeOf(other);
                Place to = null;
                for (int i = 0; i < TRIES && to == null && from != null; i++) {
                    int slot = 1 + random.nextInt(compiled.firstSlot[panel + 1] - compiled.firstSlot[panel]);
                    Place drawn = compiled.placeAt[panel][slot][compiled.poles[other]];
                    to = drawn != null && compiled.mayTake(other, drawn) && !draft.touches(drawn) ? drawn : null;
                }
                if (to == null || !swap(sums, other, from, to, draft)) {
                    return false;
                }
            }
        }
        return true;
    }

    /** On the same phases of the same panel nothing would change but the wiring; three poles touch all of them anyway. */
    private static boolean changes(CompiledProject compiled, int load, Place from, Place to) {
        return from.phaseMask() != to.phaseMask()
                || from.panel() != to.panel()
                || (compiled.rowsCount && compiled.rackOf[load] != CompiledProject.NONE && from != to);
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

    /** How far two phases of the panel would be from each other after the exchange. */
    private static long imbalance(PlanSums sums, int load, Place from, Place to) {
        CompiledProject compiled = sums.compiled;
        int left = from.phaseMask() & ~to.phaseMask();
        int taken = to.phaseMask() & ~from.phaseMask();
        if (left == 0 || taken == 0) {
            return Long.MAX_VALUE - 1;
        }
        long change = compiled.currents.runningNano[load];
        for (int slot : to.slots()) {
            int occupant = sums.loadInSlot(slot);
            change -= occupant == CompiledProject.NONE ? 0 : compiled.currents.runningNano[occupant];
        }
        NodeCurrents currents = sums.currents(from.panel() + 1);
        long before = currents.runningNano(Integer.numberOfTrailingZeros(left))
                - currents.runningNano(Integer.numberOfTrailingZeros(taken));
        return Math.abs(before - 2 * change);
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
