package evenrise.solver.engine.start;

import evenrise.model.project.Spare;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import java.util.BitSet;
import java.util.Optional;

/** Slots put by so that panels keep what is to stay free: room for whole breakers first, from the bottom of each panel. */
final class KeptSlots {
    private final PlanSums sums;
    private final CompiledProject compiled;
    private final BitSet kept = new BitSet();

    KeptSlots(PlanSums sums) {
        this.sums = sums;
        this.compiled = sums.compiled;
    }

    /** Puts by, of the slots that nobody has yet. */
    void reserve() {
        for (int panel = 0; panel < compiled.panelCount; panel++) {
            Optional<Spare> spare =
                    compiled.project.spareIn(compiled.project.panels().get(panel));
            if (spare.isPresent()) {
                reserve(panel, spare.get());
            }
        }
    }

    private void reserve(int panel, Spare spare) {
        int slots = compiled.firstSlot[panel + 1] - compiled.firstSlot[panel];
        int fits = 0;
        int all = 0;
        int switched = 0;
        for (int slot = slots; slot >= 1 && fits < spare.fits(); slot--) {
            Place place = spare.poles() <= compiled.phaseCount ? compiled.placeAt[panel][slot][spare.poles()] : null;
            if (place != null && isFree(place)) {
                keep(place);
                fits++;
                all += place.poles();
                switched += place.takesSwitched() ? place.poles() : 0;
            }
        }
        for (int slot = slots; slot >= 1 && (all < spare.slots() || switched < spare.switchedSlots()); slot--) {
            Place place = compiled.placeAt[panel][slot][1];
            boolean helps = place != null && (all < spare.slots() || place.takesSwitched());
            if (helps && isFree(place)) {
                keep(place);
                all++;
                switched += place.takesSwitched() ? 1 : 0;
            }
        }
    }

    private boolean isFree(Place place) {
        for (int slot : place.slots()) {
            if (sums.loadInSlot(slot) != CompiledProject.NONE || kept.get(slot)) {
                return false;
            }
        }
        return true;
    }

    private void keep(Place place) {
        for (int slot : place.slots()) {
            kept.set(slot);
        }
    }

    /** Whether a breaker there would take a slot that was put by. */
    boolean isKept(Place place) {
        for (int slot : place.slots()) {
            if (kept.get(slot)) {
                return true;
            }
        }
        return false;
    }
}
