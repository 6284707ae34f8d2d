package evenrise.solver.report;

import evenrise.model.project.Panel;
import evenrise.model.project.Spare;
import evenrise.model.rules.FreeSlots;
import evenrise.model.rules.Layout;
import java.util.Optional;

/**
 * The slots of one panel.
 *
 * @param taken by breakers
 * @param free that no breaker takes and that are not reserved
 * @param toBeLeft that the project asks to stay free; empty where it asks for none
 * @param freeForSwitched free ones that take a switched breaker
 */
public record SlotUse(int slots, int taken, int free, Optional<Integer> toBeLeft, int freeForSwitched) {

    static SlotUse of(Layout layout, Panel panel) {
        FreeSlots free = FreeSlots.of(panel, layout);
        return new SlotUse(
                panel.slots(),
                free.taken(),
                free.count(),
                layout.project().spareIn(panel).map(Spare::slots),
                free.forSwitched());
    }
}
