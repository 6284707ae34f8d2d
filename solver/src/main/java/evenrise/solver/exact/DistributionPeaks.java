package evenrise.solver.exact;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import evenrise.model.project.Load;
import evenrise.model.project.Overlap;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.SceneCurrents;
import evenrise.solver.exact.DistributionSeating.Choice;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** What points of a distribution must bear in any order of switching; docs/bounds.md has the argument. */
final class DistributionPeaks {
    private static final long LARGEST = ExactModelCurrents.LARGEST;

    private final CpModel model;
    private final Project project;
    private final SceneCurrents scenes;
    private final boolean tellsRolesApart;
    private final List<Load> loads;
    private final DistributionSeating seating;
    private final ContactorPeaks contactors;

    /** @param tellsRolesApart whether no load can come on a little before one of an earlier role and still be forgiven */
    DistributionPeaks(
            CpModel model,
            Project project,
            SceneCurrents scenes,
            boolean tellsRolesApart,
            List<Load> loads,
            DistributionSeating seating) {
        this.model = model;
        this.project = project;
        this.scenes = scenes;
        this.tellsRolesApart = tellsRolesApart;
        this.loads = loads;
        this.seating = seating;
        this.contactors = new ContactorPeaks(model, project, scenes, tellsRolesApart);
    }

    /** The peak of a point, below its limit. */
    IntVar bear(Point point, OptionalDouble limitAmps) {
        IntVar peak = model.newIntVar(0, LARGEST, "");
        limitAmps.ifPresent(limit -> model.addLessOrEqual(peak, ExactModelUnits.amps(limit) + loads.size()));
        for (Phase phase : point.system().phases()) {
            List<PhaseItem> items = items(point.index(), phase);
            if (project.hasClocks()) {
                bearClocks(peak, items);
            } else {
                bearOneClock(peak, items);
            }
            contactors.bear(peak, items);
        }
        return peak;
    }

    private List<PhaseItem> items(int node, Phase phase) {
        List<PhaseItem> items = new ArrayList<>();
        for (Load load : loads) {
            Map<Double, List<BoolVar>> byPart = seating.of(load).stream()
                    .filter(choice -> choice.seat().part(node, phase) > 0)
                    .collect(Collectors.groupingBy(
                            choice -> choice.seat().part(node, phase),
                            LinkedHashMap::new,
                            Collectors.mapping(Choice::taken, Collectors.toList())));
            byPart.forEach((part, taken) -> items.add(new PhaseItem(load, part, anyOf(taken))));
        }
        return items;
    }

    private BoolVar anyOf(List<BoolVar> taken) {
        if (taken.size() == 1) {
            return taken.get(0);
        }
        BoolVar any = model.newBoolVar("");
        model.addEquality(ExactModelUnits.sum(taken), any);
        return any;
    }

    private void bearOneClock(IntVar peak, List<PhaseItem> items) {
        LinearExprBuilder all = LinearExpr.newBuilder();
        items.forEach(item -> all.addTerm(item.there(), item.base()));
        model.addGreaterOrEqual(peak, all.build());
        List<PhaseItem> standing =
                items.stream().filter(item -> !item.load().switched()).toList();
        LinearExprBuilder found = LinearExpr.newBuilder();
        standing.forEach(item -> found.addTerm(item.there(), item.base()));
        for (Optional<String> system : systems()) {
            climb(peak, of(system, items), found.build());
        }
    }

    /** One at a time, or each by itself: P of the system that starts, on top of what the others draw in use. */
    private void bearClocks(IntVar peak, List<PhaseItem> items) {
        LinearExprBuilder inUse = LinearExpr.newBuilder();
        items.forEach(item -> inUse.addTerm(item.there(), item.use(scenes)));
        model.addGreaterOrEqual(peak, inUse.build());
        boolean anyAtOnce = project.overlap() == Overlap.ANY;
        LinearExprBuilder sum = LinearExpr.newBuilder();
        for (Optional<String> system : systems()) {
            List<PhaseItem> own = of(system, items);
            if (anyAtOnce) {
                IntVar most = model.newIntVar(0, LARGEST, "");
                LinearExprBuilder used = LinearExpr.newBuilder();
                own.forEach(item -> used.addTerm(item.there(), item.use(scenes)));
                model.addGreaterOrEqual(most, used.build());
                climb(most, own, LinearExpr.constant(0));
                sum.add(most);
            } else {
                LinearExprBuilder others = LinearExpr.newBuilder();
                items.stream()
                        .filter(item -> !own.contains(item))
                        .forEach(item -> others.addTerm(item.there(), item.use(scenes)));
                climb(peak, own, others.build());
            }
        }
        if (anyAtOnce) {
            items.stream()
                    .filter(item -> !item.load().switched())
                    .forEach(item -> sum.addTerm(item.there(), item.use(scenes)));
            model.addGreaterOrEqual(peak, sum.build());
        }
    }

    private List<Optional<String>> systems() {
        return project.systems().isEmpty()
                ? List.of(Optional.empty())
                : project.systems().stream()
                        .map(SwitchedSystem::id)
                        .map(Optional::of)
                        .toList();
    }

    private static List<PhaseItem> of(Optional<String> system, List<PhaseItem> items) {
        return items.stream()
                .filter(item -> item.load().switched()
                        && (system.isEmpty() || item.load().system().equals(system)))
                .toList();
    }

    /** @param found what every one of them finds there */
    private void climb(IntVar peak, List<PhaseItem> own, LinearExpr found) {
        if (!tellsRolesApart) {
            climb(peak, own, List.of(), found);
            return;
        }
        List<PhaseItem> earlier = new ArrayList<>();
        for (Role role : Role.values()) {
            List<PhaseItem> those =
                    own.stream().filter(item -> item.load().role() == role).toList();
            climb(peak, those, earlier, found);
            earlier.addAll(those);
        }
    }

    private void climb(IntVar peak, List<PhaseItem> own, List<PhaseItem> earlier, LinearExpr found) {
        List<PhaseItem> falling = new ArrayList<>(own);
        falling.sort(Comparator.comparingLong(PhaseItem::excess).reversed());
        LinearExprBuilder bases = LinearExpr.newBuilder().add(found);
        earlier.forEach(item -> bases.addTerm(item.there(), item.base()));
        BoolVar any = null;
        for (PhaseItem item : falling) {
            bases.addTerm(item.there(), item.base());
            any = either(any, item.there());
            LinearExprBuilder sum = LinearExpr.newBuilder().add(bases.build());
            sum.addTerm(any, item.excess());
            model.addGreaterOrEqual(peak, sum.build());
        }
    }

    /** True at least where one of the two is. */
    private BoolVar either(BoolVar before, BoolVar itself) {
        if (before == null) {
            return itself;
        }
        BoolVar any = model.newBoolVar("");
        model.addImplication(itself, any);
        model.addImplication(before, any);
        return any;
    }
}
