package evenrise.solver.rework;

import evenrise.model.project.Load;
import evenrise.model.project.SwitchedBy;
import evenrise.model.project.TripCurve;
import evenrise.model.rules.ProjectIndex;
import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * A breaker that sits in a panel and feeds nothing.
 *
 * @param slot the first that it takes
 * @param ratedAmps empty where nobody states it
 * @param curve empty where nobody states it
 * @param isOperated whether a board can switch it
 */
public record SpareBreaker(
        String panel, int slot, int poles, OptionalDouble ratedAmps, Optional<TripCurve> curve, boolean isOperated) {
    private static final double SAME_AMPS = 1e-6;

    /** Slots that it takes, each by panel and number; none where it fits nowhere. */
    Set<String> slots(ProjectIndex index) {
        Set<String> slots = new LinkedHashSet<>();
        index.panel(panel)
                .ifPresent(found ->
                        index.slotsOf(found).span(slot, poles).forEach(each -> slots.add(panel + "\n" + each)));
        return slots;
    }

    /** Whether it may feed the load as it is: of its poles, rating and curve, and operated where a board switches it. */
    boolean suits(Load load) {
        boolean isToBeOperated = load.switched()
                && load.switchedBy() == SwitchedBy.BREAKER
                && load.comesWith().isEmpty();
        return poles == load.poles()
                && ratedAmps.isPresent()
                && Math.abs(ratedAmps.getAsDouble() - load.breakerAmps()) <= SAME_AMPS
                && (load.curve().isEmpty() || load.curve().equals(curve))
                && (!isToBeOperated || isOperated);
    }

    boolean isAt(String otherPanel, int otherSlot) {
        return panel.equals(otherPanel) && slot == otherSlot;
    }
}
