package evenrise.solver.rework;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.Placement;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.ProjectIndex;
import evenrise.model.rules.Verdict;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a night costs against objective: plans of which none is as good for less work.
 *
 * @param asBuilt the plan as built, without changes
 * @param points by rising minutes; the first cures all that can be cured, the last is as good as anything found
 * @param partial by rising minutes, what cures a part only; each takes less than the first point
 * @param fewestMoves of all plans that cure as much, the one with the fewest moves
 * @param isGiven whether the one point is a plan that was given, and nothing was searched for
 * @param leastBreakers no plan of fewer re-terminated breakers keeps every rating; 0 where nothing is known
 * @param leastMoves no plan of fewer moves keeps every hard rule; 0 where nothing is known
 */
public record Front(
        FrontPoint asBuilt,
        List<FrontPoint> points,
        List<FrontPoint> partial,
        FrontPoint fewestMoves,
        boolean isGiven,
        int leastBreakers,
        int leastMoves) {
    /** Ampere-equivalents that make no difference. */
    static final double EQUAL_AMPS = 1e-3;

    public Front {
        points = List.copyOf(points);
        partial = List.copyOf(partial);
        leastMoves = Math.max(leastMoves, leastBreakers);
    }

    /**
     * Judges plans and keeps those of which no other is as good for less work. What breaks a rule in a place where the
     * plan as built does not, or loads a conductor more over its limit, is left out, whatever else it cures, and so is what
     * leaves a load without a breaker that has one. Plans are as bare as they come; {@link #finished} completes them.
     */
    public static Front of(Project project, Plan built, List<Plan> found) {
        return of(BuiltPlant.of(project, built, Optional.empty()), found);
    }

    /** The same where gear has gone or was replaced since the plan was built. */
    public static Front of(BuiltPlant plant, List<Plan> found) {
        Plan built = plant.plan();
        ProjectIndex index = new ProjectIndex(plant.planned());
        NightPrices prices = NightPrices.of(plant);
        Evaluation before = asBuilt(plant);
        FrontPoint asBuilt = asBuilt(plant, before, prices);
        Harm start = Harm.of(before, any -> true);
        List<FrontPoint> all = new ArrayList<>();
        List<Plan> plans = new ArrayList<>(found);
        if (plant.gone().isEmpty()) {
            all.add(asBuilt);
        } else {
            plans.add(plant.staying());
        }
        Set<String> kept = before.layout().placements().stream()
                .filter(Placement::fits)
                .map(Placement::id)
                .filter(id -> !plant.gone().contains(id))
                .collect(Collectors.toSet());
        for (Plan plan : plans) {
            if (!Changes.seats(plan).keySet().containsAll(kept)) {
                continue;
            }
            Evaluation evaluation = judged(index, built, plan);
            FrontPoint point = point(plant, evaluation, prices);
            if (point.violations() == 0
                    || Harm.of(evaluation, any -> true).worseThan(start).isEmpty()) {
                all.add(point);
            }
        }
        if (all.isEmpty()) {
            all.add(asBuilt);
        }
        all.sort(Comparator.comparingDouble(FrontPoint::minutes)
                .thenComparingInt(FrontPoint::violations)
                .thenComparingDouble(FrontPoint::objective)
                .thenComparingInt(FrontPoint::moves)
                .thenComparingInt(each -> each.changes().settingsInAll()));
        List<FrontPoint> clean = new ArrayList<>();
        for (FrontPoint each : all) {
            if (clean.isEmpty() || each.betters(clean.get(clean.size() - 1))) {
                clean.add(each);
            }
        }
        int least = clean.get(clean.size() - 1).violations();
        return new Front(
                asBuilt,
                clean.stream().filter(each -> each.violations() == least).toList(),
                clean.stream().filter(each -> each.violations() > least).toList(),
                all.stream()
                        .filter(each -> each.violations() == least)
                        .min(Comparator.comparingInt(FrontPoint::moves))
                        .orElseThrow(),
                false,
                leastBreakers(plant),
                0);
    }

    /** What is gone goes anyway, and proves nothing of what else has to. */
    private static int leastBreakers(BuiltPlant plant) {
        return LeastBreakers.of(Layout.of(plant.planned(), PlanFinisher.timed(plant.planned(), plant.staying())));
    }

    private static Evaluation asBuilt(BuiltPlant plant) {
        return judged(new ProjectIndex(plant.at(plant.plan())), plant.plan(), plant.plan());
    }

    /** Without a change: what is gone is still there. */
    private static FrontPoint asBuilt(BuiltPlant plant, Evaluation before, NightPrices prices) {
        Changes none = new Changes(List.of(), List.of(), List.of(), List.of());
        return point(before, none, prices);
    }

    /** That one plan is the way to go, whatever it costs and breaks. */
    public static Front to(Project project, Plan built, Plan target) {
        return to(BuiltPlant.of(project, built, Optional.empty()), target);
    }

    /** The same where gear has gone or was replaced since the plan was built. */
    public static Front to(BuiltPlant plant, Plan target) {
        ProjectIndex index = new ProjectIndex(plant.planned());
        NightPrices prices = NightPrices.of(plant);
        FrontPoint point = point(plant, judged(index, plant.plan(), target), prices);
        return new Front(
                asBuilt(plant, asBuilt(plant), prices),
                List.of(point),
                List.of(),
                point,
                true,
                leastBreakers(plant),
                0);
    }

    /** Where the objective counts moves, they are those from the plan as built. */
    private static Evaluation judged(ProjectIndex index, Plan built, Plan bare) {
        return Evaluation.of(
                Layout.of(index, PlanFinisher.timed(index.project(), bare)),
                () -> Bounds.builder().build(),
                Optional.of(built));
    }

    private static FrontPoint point(BuiltPlant plant, Evaluation evaluation, NightPrices prices) {
        Plan plan = evaluation.layout().plan();
        return point(
                evaluation, Changes.between(evaluation.layout().index(), plant.plan(), plan, plant.gone()), prices);
    }

    private static FrontPoint point(Evaluation evaluation, Changes changes, NightPrices prices) {
        Verdict verdict = evaluation.verdict();
        Layout layout = evaluation.layout();
        return new FrontPoint(
                changes,
                prices.cost(changes),
                verdict.violations().size(),
                verdict.metrics().objective(),
                marginPercent(layout),
                layout.plan());
    }

    private static double marginPercent(Layout layout) {
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        double least = 100;
        for (int i = 0; i < limits.size(); i++) {
            double allowed = limits.get(i).continuousAmps();
            for (double amps : layout.nodes().get(i).runningAmps().values()) {
                least = Math.min(least, 100 * (allowed - amps) / allowed);
            }
        }
        return least;
    }

    /**
     * The same front with every plan completed.
     *
     * @param finish completes a bare plan
     */
    public Front finished(UnaryOperator<Plan> finish) {
        Map<FrontPoint, FrontPoint> done = new IdentityHashMap<>();
        UnaryOperator<FrontPoint> once = point -> done.computeIfAbsent(point, any -> point.finished(finish));
        return new Front(
                once.apply(asBuilt),
                points.stream().map(once).toList(),
                partial.stream().map(once).toList(),
                once.apply(fewestMoves),
                isGiven,
                leastBreakers,
                leastMoves);
    }

    /** The same with what is proven of the moves, where that is more than what is known. */
    public Front atLeast(int moves) {
        return new Front(asBuilt, points, partial, fewestMoves, isGiven, leastBreakers, Math.max(leastMoves, moves));
    }

    /** Whether it is proven that no plan that keeps every rule takes fewer moves than the fewest found. */
    public boolean isFewestProven() {
        return fewestMoves.violations() == 0 && leastMoves >= fewestMoves.moves();
    }

    /** The point of this front with the same changes. */
    public FrontPoint like(FrontPoint other) {
        return Stream.of(points, partial, List.of(fewestMoves, asBuilt))
                .flatMap(List::stream)
                .filter(point -> point.changes().equals(other.changes()))
                .findFirst()
                .orElseThrow();
    }

    /** The plans to choose from, by rising minutes, with that of the fewest moves. */
    public List<FrontPoint> choices() {
        List<FrontPoint> all = new ArrayList<>(points);
        if (points.stream().noneMatch(point -> point.changes().equals(fewestMoves.changes()))) {
            all.add(fewestMoves);
            all.sort(Comparator.comparingDouble(FrontPoint::minutes));
        }
        return all;
    }

    /** The least work that cures all that was found curable. */
    public FrontPoint cureOnly() {
        return points.get(0);
    }

    /**
     * The point to take: of at most {@code mostMoves} moves, the one that costs least when a move costs
     * {@code perMoveAmps}; the best plan where only the moves are bounded, the cure that takes least work where nothing
     * is said. Where so few moves do not cure, the one that breaks fewest rules.
     */
    public FrontPoint choose(OptionalDouble perMoveAmps, OptionalInt mostMoves) {
        List<FrontPoint> within = choices().stream()
                .filter(each -> mostMoves.isEmpty() || each.moves() <= mostMoves.getAsInt())
                .toList();
        if (within.isEmpty()) {
            Optional<FrontPoint> part = partial.stream()
                    .filter(each -> each.moves() <= mostMoves.orElseThrow())
                    .reduce((one, next) -> next);
            return part.orElse(asBuilt);
        }
        if (perMoveAmps.isEmpty()) {
            return mostMoves.isEmpty()
                    ? within.get(0)
                    : within.stream()
                            .min(Comparator.comparingDouble(FrontPoint::objective))
                            .orElseThrow();
        }
        return within.stream()
                .min(Comparator.comparingDouble(each -> each.objective() + perMoveAmps.getAsDouble() * each.moves()))
                .orElseThrow();
    }

    /** The same front with at most {@code most} points: both ends, {@code kept}, and those that say most about its shape. */
    public Front thinned(int most, FrontPoint kept) {
        List<FrontPoint> left = new ArrayList<>(points);
        while (left.size() > Math.max(3, most)) {
            int least = -1;
            double smallest = Double.POSITIVE_INFINITY;
            for (int i = 1; i < left.size() - 1; i++) {
                double lost = area(left.get(i - 1), left.get(i), left.get(i + 1));
                if (left.get(i) != kept && lost < smallest) {
                    smallest = lost;
                    least = i;
                }
            }
            if (least < 0) {
                break;
            }
            left.remove(least);
        }
        return new Front(
                asBuilt,
                left,
                partial.contains(kept) ? List.of(kept) : List.of(),
                fewestMoves,
                isGiven,
                leastBreakers,
                leastMoves);
    }

    /** What the staircase loses where the middle step goes. */
    private static double area(FrontPoint before, FrontPoint middle, FrontPoint after) {
        return (before.objective() - middle.objective()) * (after.minutes() - middle.minutes());
    }
}
