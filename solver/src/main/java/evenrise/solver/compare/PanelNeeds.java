package evenrise.solver.compare;

import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.Spare;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.ProjectIndex;
import evenrise.model.rules.SceneCurrents;
import evenrise.model.rules.SceneCurrents.InScene;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What the panels of every plan that keeps the rules have together: at each place at least one; and for any set of places to
 * which some loads are bound, slots for their poles and rated current for their running current, beside what is to stay
 * free.
 */
final class PanelNeeds {
    /** How far the voltage at a load may be from what it states, as the rule has it. */
    private static final double VOLTAGE_WITHIN = 0.05;

    private final Variation variation;
    private final Project project;
    private final Distribution distribution;
    private final List<InScene> scenes;
    private final Map<String, FeedPoint> points = new LinkedHashMap<>();
    private final Map<String, Panel> staying = new LinkedHashMap<>();

    private PanelNeeds(Variation variation) {
        this.variation = variation;
        this.project = variation.project();
        this.distribution = Distribution.of(project);
        this.scenes = SceneCurrents.of(new ProjectIndex(project)).scenes();
        variation.points().forEach(point -> points.put(point.name(), point));
        variation.panelsThatStay().forEach(panel -> staying.put(Variation.panelPlace(panel), panel));
    }

    static List<Need<PanelKind>> of(Variation variation) {
        return new PanelNeeds(variation).all();
    }

    private List<Need<PanelKind>> all() {
        List<Need<PanelKind>> needs = new ArrayList<>();
        points.values()
                .forEach(point ->
                        needs.add(new Need<>(1, kind -> kind.point() == point ? 1 : 0, Optional.of("panels"))));
        Map<Set<String>, List<Load>> bound = new LinkedHashMap<>();
        Map<String, Set<String>> places = new HashMap<>();
        project.loads().forEach(load -> places.put(load.id(), mayBeAt(load)));
        project.loads().forEach(load -> bound.computeIfAbsent(places.get(load.id()), any -> new ArrayList<>()));
        Set<String> everywhere = new LinkedHashSet<>(points.keySet());
        everywhere.addAll(staying.keySet());
        bound.computeIfAbsent(everywhere, any -> new ArrayList<>());
        for (Load load : project.loads()) {
            bound.forEach((set, loads) -> {
                if (set.containsAll(places.get(load.id()))) {
                    loads.add(load);
                }
            });
        }
        bound.forEach((set, loads) -> {
            if (set.stream().anyMatch(points::containsKey)) {
                needs.add(slots(set, loads));
                needs.add(amps(set, loads));
            }
        });
        return needs;
    }

    private Set<String> mayBeAt(Load load) {
        Set<String> places = new LinkedHashSet<>();
        for (String place : variation.placesOf(load)) {
            Distribution.Point at = Optional.ofNullable(points.get(place))
                    .map(FeedPoint::like)
                    .or(() -> Optional.ofNullable(staying.get(place)))
                    .map(distribution::of)
                    .orElseThrow();
            double stated = load.lineToNeutralVolts().orElse(at.lineToNeutralVolts());
            if (at.system().phases().size() >= load.poles()
                    && Math.abs(at.lineToNeutralVolts() - stated) <= VOLTAGE_WITHIN * stated) {
                places.add(place);
            }
        }
        return places;
    }

    private Need<PanelKind> slots(Set<String> places, List<Load> loads) {
        int poles = loads.stream().mapToInt(Load::poles).sum();
        double there = staying.entrySet().stream()
                .filter(each -> places.contains(each.getKey()))
                .mapToDouble(each -> usableSlots(
                        each.getValue().slots()
                                - each.getValue().reservedSlots().size(),
                        project.spareIn(each.getValue())))
                .sum();
        return new Need<>(
                poles - there,
                kind -> places.contains(kind.point().name())
                        ? usableSlots(
                                kind.type().slots(),
                                project.spareIn(kind.point().like()))
                        : 0,
                places.size() == 1 ? Optional.of("slots") : Optional.empty());
    }

    private static double usableSlots(int slots, Optional<Spare> spare) {
        int free = spare.map(it -> Math.max(Math.max(it.slots(), it.switchedSlots()), it.fits() * it.poles()))
                .orElse(0);
        return Math.max(0, slots - free);
    }

    /** Summed over phases, in the scene that asks for most. */
    private Need<PanelKind> amps(Set<String> places, List<Load> loads) {
        double asked = scenes.stream()
                .mapToDouble(scene -> loads.stream()
                        .mapToDouble(load -> scene.runningAmps().get(load.id()) * load.poles())
                        .sum())
                .max()
                .orElse(0);
        double there = staying.entrySet().stream()
                .filter(each -> places.contains(each.getKey()))
                .mapToDouble(each -> amps(
                        each.getValue(),
                        each.getValue().ratedAmps(),
                        distribution.of(each.getValue()).system().phases().size()))
                .sum();
        return new Need<>(
                asked - there,
                kind -> places.contains(kind.point().name())
                        ? amps(
                                kind.point().like(),
                                kind.type().ratedAmps(),
                                kind.point().system().phases().size())
                        : 0,
                places.size() == 1 ? Optional.of("amperes") : Optional.empty());
    }

    private double amps(Panel like, double ratedAmps, int phases) {
        double spare = project.spareIn(like).map(Spare::runningPercent).orElse(0.0);
        return ratedAmps * like.continuousFractionUnder(project.supply()) * phases * (1 - spare / 100)
                + phases * Need.FORGIVEN;
    }
}
