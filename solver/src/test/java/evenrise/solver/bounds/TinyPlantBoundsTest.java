package evenrise.solver.bounds;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.check.Feasibility;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.Metrics;
import evenrise.model.plan.Plan;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Proof;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import evenrise.solver.engine.BoundSource;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.search.Planner;
import evenrise.solver.exact.ExactBounds;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Of tiny plants with every part: no bound is above the least of all plans that keep every rule. */
class TinyPlantBoundsTest {
    private static final double ROUNDING = 1e-6;
    private static final long MOST_PLANS = 3_000;
    private static final int SAMPLE = 20;
    private static final int PLANTS = Integer.getInteger("evenrise.plants", 100);

    @Test
    void noBoundIsAboveTheLeastOfAllPlans() {
        long sound = LongStream.rangeClosed(1, SAMPLE).filter(this::holds).count();

        assertThat(sound).as("plants with a plan that keeps every rule").isGreaterThan(SAMPLE / 3);
    }

    @Tag("slow")
    @Test
    void noBoundIsAboveTheLeastOfAllPlansOfHundredsOfPlants() {
        long sound = LongStream.range(1_000, 1_000 + PLANTS).filter(this::holds).count();

        assertThat(sound).as("plants with a plan that keeps every rule").isGreaterThan(PLANTS / 3);
    }

    /** Whether any plan keeps every rule; fails where a bound is above the least of those that do. */
    private boolean holds(long seed) {
        Project project = TinyPlant.of(seed, MOST_PLANS);
        Optional<Plan> earlier = seed % 2 == 0 ? EveryPlantPlan.first(project) : Optional.empty();
        Least least = new Least(project);
        EveryPlantPlan.sound(project, earlier, (plan, verdict) -> least.take(verdict));
        if (!Double.isFinite(least.objective)) {
            return false;
        }
        assertThat(Feasibility.impossible(project))
                .as("that no plan can keep the rules, seed %d", seed)
                .isEmpty();
        Bounds known = ProvenBounds.of(project);
        least.bears("objective", known.objective(), least.objective, seed);
        least.bears("peak", known.peakInrushAmps(), least.peak, seed);
        least.bears("deviation", known.supplyDeviationAmps(), least.supplyDeviation, seed);
        least.bears("panels' deviations", known.panelDeviationsAmps(), least.panelDeviations, seed);
        least.bears("duration", known.durationSeconds(), least.duration, seed);
        least.bears("boards", ProvenBounds.fewestBoards(project), least.boards, seed);
        arguments(project, least, seed);
        PlanningRequest request = new PlanningRequest(project, earlier, new Budget.Moves(2_000), seed, 1);
        double proven = proven(request, known);
        least.bears("proven objective", proven, least.objective, seed);
        found(request, known.withObjective(proven), least, seed);
        return true;
    }

    /** Each argument of its own for the peaks of sources. */
    private static void arguments(Project project, Least least, long seed) {
        Seats seats = new Seats(project);
        SourcePeaks contactors = new SourcePeaks(project, seats);
        PlantLoads plant = new PlantLoads(project, seats);
        int end = plant.grid.count() - 1;
        PlantWindows windows = new PlantWindows.Order(plant).until(end);
        assertThat(windows.possible).as("windows, seed %d", seed).isTrue();
        least.bears("contactors and means", contactors.sumAmps(), least.peaks, seed);
        SpreadSources spread = new SpreadSources(plant, () -> false);
        PlantWeights begin = PlantWeights.begin(plant, windows, end);
        Random random = new Random(seed);
        for (int trial = 0; trial < 5; trial++) {
            PlantWeights any = begin.with(begin.values.clone());
            for (int i = 0; i < any.values.length; i++) {
                any.values[i] *= Math.pow(random.nextDouble(), 1 << trial);
            }
            any = any.with(any.values);
            least.bears("any weights", spread.amps(any, windows, -1), least.peaks, seed);
            for (int source = 0; source < plant.sources.length; source++) {
                double amps = spread.amps(any, windows, source);
                least.bears("any weights of a source", amps, least.bySource.get(plant.sources[source]), seed);
            }
        }
        ObjectiveWeights weights = project.objective();
        PlantMinimum.Found found =
                new PlantMinimum(plant, 10, () -> false).of(weights.peakInrush(), weights.duration(), 0);
        least.bears("spread", found.sourcesAmps(), least.peaks, seed);
        least.bears("spread at the supply", found.supplyAmps(), least.peak, seed);
        least.bears("spread with duration", found.objective(), least.peaksAndDuration(weights), seed);
    }

    /** A search of its own finds nothing better, and is not called optimal where another is. */
    private static void found(PlanningRequest request, Bounds bounds, Least least, long seed) {
        Project project = request.project();
        Plan plan = PlanFinisher.timed(
                project, new Planner(request, progress -> {}).plan().plan());
        Verdict verdict = Referee.judge(Layout.of(project, plan), request.from());
        if (verdict.violations().isEmpty()) {
            least.bears("least of all plans", least.objective, verdict.metrics().objective(), seed);
        }
        if (Proof.of(verdict, bounds).isOptimal()) {
            assertThat(verdict.metrics().objective())
                    .as("optimal, seed %d", seed)
                    .isLessThanOrEqualTo(least.objective + Proof.PROVEN_AMPS + ROUNDING);
        }
    }

    private static double proven(PlanningRequest request, Bounds known) {
        double[] best = {known.objective()};
        ExactBounds exact = new ExactBounds();
        if (exact.suit(request.project())) {
            exact.on(request, note -> {})
                    .sharpen(
                            known,
                            bounds -> best[0] = Math.max(best[0], bounds.objective()),
                            new BoundSource.Incumbent() {
                                @Override
                                public void bound(double objective) {
                                    best[0] = Math.max(best[0], objective);
                                }

                                @Override
                                public void plan(Plan plan) {
                                    // every plan is known
                                }

                                @Override
                                public Optional<Plan> best() {
                                    return Optional.empty();
                                }
                            });
        }
        return best[0];
    }

    /** The least of each figure over all plans that keep every rule. */
    private static final class Least {
        private final int panels;
        private double objective = Double.POSITIVE_INFINITY;
        private double peak = Double.POSITIVE_INFINITY;
        private double peaks = Double.POSITIVE_INFINITY;
        private double supplyDeviation = Double.POSITIVE_INFINITY;
        private double panelDeviations = Double.POSITIVE_INFINITY;
        private double duration = Double.POSITIVE_INFINITY;
        private double boards = Double.POSITIVE_INFINITY;
        private final Map<Integer, Double> bySource = new HashMap<>();
        private final Map<List<Double>, Boolean> ends = new HashMap<>();

        Least(Project project) {
            panels = project.panels().size();
        }

        void take(Verdict verdict) {
            Metrics metrics = verdict.metrics();
            double all = metrics.peakInrushAmps() + metrics.sourcePeaksAmps().orElse(0);
            objective = Math.min(objective, metrics.objective());
            peak = Math.min(peak, metrics.peakInrushAmps());
            peaks = Math.min(peaks, all);
            duration = Math.min(duration, metrics.durationSeconds());
            boards = Math.min(boards, metrics.boardsUsed());
            ends.put(List.of(all, metrics.durationSeconds()), true);
            List<NodeFigures> nodes = verdict.nodes();
            supplyDeviation = Math.min(supplyDeviation, nodes.get(0).deviationAmps());
            panelDeviations = Math.min(
                    panelDeviations,
                    nodes.subList(1, 1 + panels).stream()
                            .mapToDouble(NodeFigures::deviationAmps)
                            .sum());
            for (int i = 0; i < nodes.size(); i++) {
                double most = nodes.get(i).peaks().stream()
                        .mapToDouble(each -> each.amps())
                        .max()
                        .orElse(0);
                bySource.merge(i, most, Math::min);
            }
        }

        double peaksAndDuration(ObjectiveWeights weights) {
            return ends.keySet().stream()
                    .mapToDouble(each -> weights.peakInrush() * each.get(0) + weights.duration() * each.get(1))
                    .min()
                    .orElseThrow();
        }

        void bears(String what, double bound, double least, long seed) {
            assertThat(bound).as("%s, seed %d", what, seed).isLessThanOrEqualTo(least + ROUNDING);
        }
    }
}
