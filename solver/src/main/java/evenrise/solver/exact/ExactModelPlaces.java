package evenrise.solver.exact;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.project.SlotLayout;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;

/**
 * Slots in the exact model. A load chooses a spot, a panel and phases; which slots a spot's breakers take is chosen for
 * breakers alike together, since nothing but the layout sees a difference between them.
 */
final class ExactModelPlaces {
    /** What currents see of a place: the panel and the phases, in the system's order. */
    record Spot(String panel, List<Phase> phases) {}

    /** A breaker's place. */
    record Place(Spot spot, List<Integer> slots) {
        int slot() {
            return slots.get(0);
        }
    }

    /** Breakers that fit the same places; a load with a fixed slot is a kind of its own. */
    private record Kind(int poles, boolean switched, String alone) {}

    private final CpModel model;
    private final Project project;
    private final Map<Kind, Map<Place, BoolVar>> taken = new LinkedHashMap<>();
    private final Map<String, Map<Spot, BoolVar>> spots = new LinkedHashMap<>();
    private final Map<String, TreeMap<Integer, List<BoolVar>>> inSlot = new LinkedHashMap<>();

    ExactModelPlaces(CpModel model, Project project) {
        this.model = model;
        this.project = project;
        Map<Kind, List<Load>> kinds = new LinkedHashMap<>();
        project.loads()
                .forEach(load -> kinds.computeIfAbsent(kind(load), any -> new ArrayList<>())
                        .add(load));
        kinds.forEach(this::give);
        inSlot.values()
                .forEach(slots ->
                        slots.values().forEach(literals -> model.addAtMostOne(literals.toArray(BoolVar[]::new))));
        for (Load load : project.loads()) {
            load.apartFrom().forEach(other -> apart(load.id(), other));
            load.samePhaseAs().forEach(other -> samePhases(load.id(), other));
        }
        project.shutdownGroups().stream().filter(ShutdownGroup::samePanel).forEach(this::samePanel);
    }

    /** Literals that tell where a load sits as far as currents are concerned; exactly one holds. */
    Map<Spot, BoolVar> spots(Load load) {
        return spots.get(load.id());
    }

    /** Places of breakers like the load's, with whether one of them takes it. */
    Map<Place, BoolVar> taken(Load load) {
        return taken.get(kind(load));
    }

    /** Of a solution, the places that are taken among {@link #taken}, by what currents see of them. */
    static Map<Spot, Deque<Place>> bySpot(Predicate<Literal> holds, Map<Place, BoolVar> taken) {
        Map<Spot, Deque<Place>> bySpot = new HashMap<>();
        taken.forEach((place, literal) -> {
            if (holds.test(literal)) {
                bySpot.computeIfAbsent(place.spot(), any -> new ArrayDeque<>()).add(place);
            }
        });
        return bySpot;
    }

    /** 1 where the load sits in the panel. */
    LinearExpr in(String load, String panel) {
        return where(load, spot -> spot.panel().equals(panel));
    }

    LinearExpr where(String load, Predicate<Spot> matches) {
        return ExactModelUnits.sum(spots.get(load).entrySet().stream()
                .filter(each -> matches.test(each.getKey()))
                .map(Map.Entry::getValue)
                .toList());
    }

    private static Kind kind(Load load) {
        return new Kind(load.poles(), load.switched(), load.fixed().slot().isPresent() ? load.id() : "");
    }

    private void give(Kind kind, List<Load> loads) {
        Map<Place, BoolVar> own = new LinkedHashMap<>();
        Map<Spot, List<BoolVar>> bySpot = new LinkedHashMap<>();
        for (Place place : fitting(loads.get(0))) {
            BoolVar literal = model.newBoolVar("");
            own.put(place, literal);
            bySpot.computeIfAbsent(place.spot(), any -> new ArrayList<>()).add(literal);
            for (int slot : place.slots()) {
                inSlot.computeIfAbsent(place.spot().panel(), any -> new TreeMap<>())
                        .computeIfAbsent(slot, any -> new ArrayList<>())
                        .add(literal);
            }
        }
        taken.put(kind, own);
        Map<Spot, LinearExprBuilder> loadsIn = new LinkedHashMap<>();
        for (Load load : loads) {
            Map<Spot, BoolVar> chosen = new LinkedHashMap<>();
            for (Spot spot : bySpot.keySet()) {
                if (load.maySitIn(spot.panel())) {
                    BoolVar literal = model.newBoolVar("");
                    chosen.put(spot, literal);
                    loadsIn.computeIfAbsent(spot, any -> LinearExpr.newBuilder())
                            .add(literal);
                }
            }
            if (chosen.isEmpty()) {
                throw new Unfit("load " + load.id() + " has no slot that it can use");
            }
            model.addExactlyOne(chosen.values().toArray(BoolVar[]::new));
            spots.put(load.id(), chosen);
        }
        bySpot.forEach((spot, literals) ->
                model.addEquality(loadsIn.getOrDefault(spot, LinearExpr.newBuilder()), ExactModelUnits.sum(literals)));
    }

    /** Places that fit such a breaker, in any panel: slot, switched-slot, and a fixed slot. */
    private List<Place> fitting(Load load) {
        List<Place> fitting = new ArrayList<>();
        for (Panel panel : project.panels()) {
            SlotLayout layout = new SlotLayout(panel, project.supply().system());
            for (int slot = 1; slot <= panel.slots(); slot++) {
                List<Integer> span = layout.span(slot, load.poles());
                List<Phase> phases =
                        span.stream().map(layout::phase).distinct().sorted().toList();
                if (phases.size() == load.poles()
                        && load.fixed().slot().orElse(slot) == slot
                        && panel.takes(span, load.switched())) {
                    fitting.add(new Place(new Spot(panel.id(), phases), span));
                }
            }
        }
        return fitting;
    }

    private void apart(String one, String other) {
        for (Panel panel : project.panels()) {
            model.addLessOrEqual(
                    LinearExpr.newBuilder().add(in(one, panel.id())).add(in(other, panel.id())), 1);
        }
    }

    private void samePhases(String one, String other) {
        Set<List<Phase>> sets = new LinkedHashSet<>();
        spots.get(one).keySet().forEach(spot -> sets.add(spot.phases()));
        spots.get(other).keySet().forEach(spot -> sets.add(spot.phases()));
        sets.forEach(phases -> model.addEquality(
                where(one, spot -> spot.phases().equals(phases)),
                where(other, spot -> spot.phases().equals(phases))));
    }

    private void samePanel(ShutdownGroup group) {
        List<Load> members = ExactModelOrder.members(project, group);
        for (Load member : members) {
            project.panels()
                    .forEach(panel ->
                            model.addEquality(in(members.get(0).id(), panel.id()), in(member.id(), panel.id())));
        }
    }
}
