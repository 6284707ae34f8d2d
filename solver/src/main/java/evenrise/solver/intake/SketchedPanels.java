package evenrise.solver.intake;

import evenrise.model.intake.Mapping;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Practice;
import evenrise.model.project.SlotNumbering;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.DoubleStream;

/** First panels for loads, with slots and ratings to spare, to be replaced by the real ones. */
final class SketchedPanels {
    /** In ampere, of panels as they are sold in either practice; common practice, no source. */
    private static final Map<Practice, double[]> PANEL_RATINGS = Map.of(
            Practice.NEC, new double[] {100, 125, 200, 225, 400, 600},
            Practice.IEC, new double[] {63, 100, 125, 160, 250, 400, 630});

    private final Mapping mapping;
    private final Practice practice;

    SketchedPanels(Mapping mapping) {
        this.mapping = mapping;
        this.practice = mapping.practiceOfRatings();
    }

    /** Those that the list names, and as many more as what it names none for needs. */
    List<Panel> of(List<Load> loads) {
        List<Panel> panels = new ArrayList<>();
        Map<String, List<Load>> named = new LinkedHashMap<>();
        loads.stream()
                .filter(load -> !load.panels().isEmpty())
                .forEach(load -> named.computeIfAbsent(load.panels().get(0), any -> new ArrayList<>())
                        .add(load));
        named.forEach((id, fed) -> {
            int poles = fed.stream().mapToInt(Load::poles).sum();
            int slots = Math.max(mapping.panelSlots(), (int) Math.ceil(poles * (1 + Sketch.SPARE) / 2) * 2);
            panels.add(panel(id, slots, panelAmps(fed, 1)));
        });
        List<Load> free = loads.stream().filter(load -> load.panels().isEmpty()).toList();
        if (!free.isEmpty()) {
            panels.addAll(further(free, named.keySet()));
        }
        return panels;
    }

    private List<Panel> further(List<Load> loads, Set<String> taken) {
        int poles = loads.stream().mapToInt(Load::poles).sum();
        double usable = mapping.panelSlots() / (1 + Sketch.SPARE);
        int count = (int) Math.max(1, Math.ceil(poles / usable));
        boolean hasFeeds = loads.stream().anyMatch(load -> !load.apartFrom().isEmpty());
        count = Math.max(count, hasFeeds ? 2 : 1);
        double largest = PANEL_RATINGS.get(practice)[PANEL_RATINGS.get(practice).length - 1];
        while (phaseAmps(loads, mapping.system()) * (1 + Sketch.SPARE) / count / mapping.continuousFraction()
                > largest) {
            count++;
        }
        double rated = panelAmps(loads, count);
        List<Panel> panels = new ArrayList<>();
        for (int i = 1; panels.size() < count; i++) {
            if (!taken.contains("P" + i)) {
                panels.add(panel("P" + i, mapping.panelSlots(), rated));
            }
        }
        return panels;
    }

    /** The smallest rating that carries a share of the loads, and twice the largest of them. */
    private double panelAmps(List<Load> loads, int panels) {
        double share = phaseAmps(loads, mapping.system()) * (1 + Sketch.SPARE) / panels / mapping.continuousFraction();
        double wanted = Math.max(
                share, 2 * Collections.max(loads.stream().map(Load::runningAmps).toList()));
        double[] ratings = PANEL_RATINGS.get(practice);
        return DoubleStream.of(ratings)
                .filter(each -> each >= wanted)
                .findFirst()
                .orElse(ratings[ratings.length - 1]);
    }

    private Panel panel(String id, int slots, double rated) {
        boolean isThree = mapping.system().phases().size() == 3;
        return Panel.builder()
                .id(id)
                .slots(slots)
                .ratedAmps(rated)
                .numbering(isThree && practice == Practice.IEC ? SlotNumbering.SEQUENTIAL : SlotNumbering.ALTERNATING)
                .build();
    }

    /** Running current of a phase where they are spread evenly. */
    static double phaseAmps(List<Load> loads, PhaseSystem system) {
        double sum = loads.stream()
                .mapToDouble(load -> load.runningAmps() * load.poles())
                .sum();
        return sum / system.phases().size();
    }
}
