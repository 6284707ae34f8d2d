package evenrise.solver.exact;

import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.project.SlotLayout;
import evenrise.model.project.Spare;
import evenrise.model.project.SwitchedBy;
import evenrise.model.rules.Distribution;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Room in the panels of a distribution: no more poles than slots, by phase and for switched breakers, less what is to stay free. */
final class DistributionRoom {
    private final CpModel model;
    private final Project project;
    private final Distribution distribution;
    private final List<Load> loads;

    /** @param loads all of the project's */
    DistributionRoom(CpModel model, Project project, Distribution distribution, List<Load> loads) {
        this.model = model;
        this.project = project;
        this.distribution = distribution;
        this.loads = loads;
    }

    /** One way to sit of a load. */
    record Seated(int panel, Set<Phase> phases, Literal taken) {}

    /** @param ways to sit by load */
    void keep(Map<String, List<Seated>> ways) {
        for (int at = 0; at < project.panels().size(); at++) {
            keep(at, ways);
        }
    }

    private void keep(int at, Map<String, List<Seated>> ways) {
        Panel panel = project.panels().get(at);
        SlotLayout layout = new SlotLayout(panel, distribution.of(panel).system());
        Set<Integer> slots = new HashSet<>();
        for (int slot = 1; slot <= panel.slots(); slot++) {
            slots.add(slot);
        }
        panel.reservedSlots().forEach(slots::remove);
        long switchedSlots = panel.switchedSlots()
                .map(own -> own.stream().distinct().filter(slots::contains).count())
                .orElse((long) slots.size());
        int spareSlots = project.spareIn(panel)
                .map(spare -> Math.max(spare.slots(), spare.fits() * spare.poles()))
                .orElse(0);
        int spareSwitched = project.spareIn(panel).map(Spare::switchedSlots).orElse(0);
        LinearExprBuilder poles = LinearExpr.newBuilder();
        LinearExprBuilder switched = LinearExpr.newBuilder();
        for (Load load : loads) {
            for (Seated way : ways.get(load.id())) {
                if (way.panel() == at) {
                    poles.addTerm(way.taken(), load.poles());
                    if (isSwitchedBreaker(load)) {
                        switched.addTerm(way.taken(), load.poles());
                    }
                }
            }
        }
        model.addLessOrEqual(poles.build(), slots.size() - spareSlots);
        model.addLessOrEqual(switched.build(), switchedSlots - spareSwitched);
        for (Phase phase : layout.phases()) {
            LinearExprBuilder there = LinearExpr.newBuilder();
            for (Load load : loads) {
                ways.get(load.id()).stream()
                        .filter(way -> way.panel() == at && way.phases().contains(phase))
                        .forEach(way -> there.add(way.taken()));
            }
            model.addLessOrEqual(
                    there.build(),
                    slots.stream().filter(slot -> layout.phase(slot) == phase).count());
        }
    }

    private static boolean isSwitchedBreaker(Load load) {
        return load.switched() && load.comesWith().isEmpty() && load.switchedBy() == SwitchedBy.BREAKER;
    }
}
