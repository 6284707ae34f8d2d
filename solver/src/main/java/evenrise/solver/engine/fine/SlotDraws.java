package evenrise.solver.engine.fine;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Place;
import java.util.SplittableRandom;

/** A breaker takes other phases of its panel; who sat there takes its slots, pole for pole. Of four draws the one most alike. */
final class SlotDraws implements FineDraws {
    private final FinePlan plan;
    private final CompiledProject compiled;
    /** By panel, whether free slots are wanted as they are. */
    private final boolean[] keepsRoom;

    SlotDraws(FinePlan plan) {
        this.plan = plan;
        compiled = plan.compiled;
        keepsRoom = new boolean[compiled.panelCount];
        for (int panel = 0; panel < keepsRoom.length; panel++) {
            keepsRoom[panel] = compiled.project
                    .spareIn(compiled.project.panels().get(panel))
                    .isPresent();
        }
    }

    @Override
    public boolean draw(FineChange change, SplittableRandom random) {
        if (plan.placed.length == 0) {
            return false;
        }
        int load = HotLoads.draw(plan, plan.placed, random);
        Place from = plan.placeOf[load];
        int slots = compiled.firstSlot[from.panel() + 1] - compiled.firstSlot[from.panel()];
        Place best = null;
        long least = Long.MAX_VALUE;
        for (int i = 0; i < HotLoads.TRIES; i++) {
            Place to = compiled.placeAt[from.panel()][1 + random.nextInt(slots)][compiled.poles[load]];
            if (to != null && to.phaseMask() != from.phaseMask() && compiled.mayTake(load, to)) {
                long difference = difference(load, to);
                if (difference < least) {
                    least = difference;
                    best = to;
                }
            }
        }
        change.panel = from.panel();
        return best != null && exchange(load, from, best, change);
    }

    private long difference(int load, Place to) {
        long difference = 0;
        for (int slot : to.slots()) {
            int occupant = plan.loadInSlot[slot];
            long other = occupant == CompiledProject.NONE ? 0 : compiled.currents.runningNano[occupant];
            difference += Math.abs(compiled.currents.runningNano[load] - other);
        }
        return difference;
    }

    private boolean exchange(int load, Place from, Place to, FineChange change) {
        int previous = CompiledProject.NONE;
        for (int i = 0; i < to.slots().length; i++) {
            int occupant = plan.loadInSlot[to.slots()[i]];
            if (occupant == CompiledProject.NONE && keepsRoom[from.panel()] || occupant == load) {
                return false;
            }
            if (occupant == CompiledProject.NONE || occupant == previous) {
                continue;
            }
            previous = occupant;
            Place held = plan.placeOf[occupant];
            if (plan.isTied(occupant) || held.slots()[0] != to.slots()[i] || i + held.poles() > to.poles()) {
                return false;
            }
            int slot = from.slots()[i] - compiled.firstSlot[from.panel()] + 1;
            Place offered = compiled.placeAt[from.panel()][slot][held.poles()];
            if (offered == null || !compiled.mayTake(occupant, offered)) {
                return false;
            }
            change.add(occupant, offered, plan.outputOf[occupant], plan.instantOf[occupant]);
        }
        change.add(load, to, plan.outputOf[load], plan.instantOf[load]);
        return true;
    }
}
