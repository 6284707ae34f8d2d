package evenrise.solver.engine;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.LinearExpr;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.project.SlotLayout;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/** Slots in the exact model: one literal for each place that a load by itself may take. */
final class ExactModelPlaces {
    /** What currents see of a place: the panel and the phases, in the system's order. */
    record Spot(String panel, List<Phase> phases) {}

    /** A breaker's place. */
    record Place(Spot spot, List<Integer> slots) {
        int slot() {
            return slots.get(0);
        }
    }

    private final CpModel model;
    private final Project project;
    private final Map<String, Map<Place, BoolVar>> places = new LinkedHashMap<>();
    private final Map<String, Map<Spot, BoolVar>> spots = new LinkedHashMap<>();

    ExactModelPlaces(CpModel model, Project project) {
        this.model = model;
        this.project = project;
        project.loads().forEach(this::give);
        project.panels().forEach(this::oneBreakerASlot);
        for (Load load : project.loads()) {
            load.apartFrom().forEach(other -> apart(load.id(), other));
            load.samePhaseAs().forEach(other -> samePhases(load.id(), other));
        }
        project.shutdownGroups().stream().filter(ShutdownGroup::samePanel).forEach(this::samePanel);
    }

    Map<Place, BoolVar> places(Load load) {
        return places.get(load.id());
    }

    /** Literals that tell where a load sits as far as currents are concerned; exactly one holds. */
    Map<Spot, BoolVar> spots(Load load) {
        return spots.get(load.id());
    }

    /** 1 where the load sits in the panel. */
    LinearExpr in(String load, String panel) {
        return where(load, spot -> spot.panel().equals(panel));
    }

    private LinearExpr where(String load, Predicate<Spot> matches) {
        return ExactModelUnits.sum(spots.get(load).entrySet().stream()
                .filter(each -> matches.test(each.getKey()))
                .map(Map.Entry::getValue)
                .toList());
    }

    private void give(Load load) {
        Map<Place, BoolVar> own = new LinkedHashMap<>();
        Map<Spot, List<BoolVar>> bySpot = new LinkedHashMap<>();
        for (Place place : allowed(load)) {
            BoolVar literal = model.newBoolVar(load.id() + " at " + place);
            own.put(place, literal);
            bySpot.computeIfAbsent(place.spot(), any -> new ArrayList<>()).add(literal);
        }
        model.addExactlyOne(own.values().toArray(BoolVar[]::new));
        places.put(load.id(), own);
        Map<Spot, BoolVar> ownSpots = new LinkedHashMap<>();
        bySpot.forEach((spot, literals) -> {
            BoolVar literal = model.newBoolVar(load.id() + " in " + spot);
            model.addEquality(literal, ExactModelUnits.sum(literals));
            ownSpots.put(spot, literal);
        });
        spots.put(load.id(), ownSpots);
    }

    /** Places that fit the load, as if it were alone: slot, switched-slot, panel-allowed and fixed. */
    private List<Place> allowed(Load load) {
        List<Place> allowed = new ArrayList<>();
        for (Panel panel : project.panels()) {
            boolean refused = !load.panels().isEmpty() && !load.panels().contains(panel.id())
                    || !load.fixed().panel().orElse(panel.id()).equals(panel.id());
            SlotLayout layout = new SlotLayout(panel, project.supply().system());
            for (int slot = 1; slot <= panel.slots() && !refused; slot++) {
                List<Integer> span = layout.span(slot, load.poles());
                List<Phase> phases =
                        span.stream().map(layout::phase).distinct().sorted().toList();
                if (phases.size() == load.poles()
                        && load.fixed().slot().orElse(slot) == slot
                        && span.stream().allMatch(each -> takes(panel, each, load))) {
                    allowed.add(new Place(new Spot(panel.id(), phases), span));
                }
            }
        }
        return allowed;
    }

    private static boolean takes(Panel panel, int slot, Load load) {
        return !panel.reservedSlots().contains(slot)
                && (!load.switched()
                        || panel.switchedSlots()
                                .map(slots -> slots.contains(slot))
                                .orElse(true));
    }

    private void oneBreakerASlot(Panel panel) {
        for (int slot = 1; slot <= panel.slots(); slot++) {
            int here = slot;
            model.addAtMostOne(places.values().stream()
                    .flatMap(own -> own.entrySet().stream())
                    .filter(each -> each.getKey().spot().panel().equals(panel.id())
                            && each.getKey().slots().contains(here))
                    .map(Map.Entry::getValue)
                    .toArray(BoolVar[]::new));
        }
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
