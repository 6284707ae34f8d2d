package evenrise.model.review;

import evenrise.model.electrical.source.Terminals;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Between which conductors loads are fed, at each point that carries their currents. */
final class FedTerminals {
    private final Distribution distribution;
    private final Map<String, Set<Terminals>> used = new LinkedHashMap<>();

    private FedTerminals(Layout layout) {
        this.distribution = layout.distribution();
        distribution.points().forEach(point -> used.put(point.id(), new LinkedHashSet<>()));
        layout.placements().stream()
                .filter(Placement::fits)
                .sorted(Comparator.comparingDouble(each -> each.onSeconds().orElse(Double.NEGATIVE_INFINITY)))
                .forEach(each -> use(
                        distribution.point(each.assignment().panel()).orElseThrow(),
                        each.phases().stream().distinct().toList()));
    }

    static Map<String, Set<Terminals>> of(Layout layout) {
        return new FedTerminals(layout).used;
    }

    /** All that any point has. */
    static List<Terminals> all(Distribution distribution) {
        return distribution.points().stream()
                .flatMap(point -> Terminals.all(point.system()).stream())
                .distinct()
                .toList();
    }

    /** At its panel and all that carries its current; before transformers what those draw from. */
    private void use(Point panel, List<Phase> phases) {
        distribution.onward(panel.index()).forEach(index -> used(index).addAll(of(panel.system(), phases)));
        for (Point origin = distribution.points().get(panel.origin());
                origin.transformer().isPresent();
                origin = distribution
                        .points()
                        .get(distribution.points().get(origin.parent()).origin())) {
            List<Terminals> drawn = drawnFrom(origin);
            distribution.onward(origin.parent()).forEach(index -> used(index).addAll(drawn));
        }
    }

    private Set<Terminals> used(int index) {
        return used.get(distribution.points().get(index).id());
    }

    private static List<Terminals> drawnFrom(Point transformer) {
        List<Phase> primary = transformer.transformer().orElseThrow().primaryPhases();
        return transformer.transformer().orElseThrow().passesNeutralOn()
                ? primary.stream().map(Terminals::neutral).toList()
                : Terminals.of(primary);
    }

    /** A one-pole load has a neutral by it, through which it moves the other phases, too. */
    private static List<Terminals> of(PhaseSystem system, List<Phase> phases) {
        return phases.size() == 1
                ? system.phases().stream().map(Terminals::neutral).toList()
                : Terminals.of(phases);
    }
}
