package evenrise.solver.bounds;

import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.SlotLayout;
import evenrise.model.project.Supply;
import evenrise.model.rules.Tolerances;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;

/** On how few phases some loads can sit: poles need slots, and running current is limited by the supply's rating. */
final class PhaseRoom {
    private final long[] slots;
    private final double ampsEach;

    PhaseRoom(Project project) {
        Supply supply = project.supply();
        this.slots = new long[supply.system().phases().size()];
        this.ampsEach = supply.continuousAmps() + Tolerances.AMPS;
        for (Panel panel : project.panels()) {
            SlotLayout layout = new SlotLayout(panel, supply.system());
            Set<Integer> reserved = new HashSet<>(panel.reservedSlots());
            for (int slot = 1; slot <= panel.slots(); slot++) {
                if (!reserved.contains(slot)) {
                    slots[supply.system().phases().indexOf(layout.phase(slot))]++;
                }
            }
        }
        Arrays.sort(slots);
    }

    /**
     * The fewest phases that can be touched.
     *
     * @param largestPoles of one of the loads; it touches as many phases
     * @param poles of all of them
     * @param runningAmps of all poles together
     */
    int fewestPhases(int largestPoles, int poles, double runningAmps) {
        int phases = Math.max(1, largestPoles);
        while (phases < slots.length && (room(phases) < poles || phases * ampsEach < runningAmps)) {
            phases++;
        }
        return Math.min(phases, slots.length);
    }

    /** Slots on the phases that have most. */
    private long room(int phases) {
        return Arrays.stream(slots, slots.length - phases, slots.length).sum();
    }
}
