package evenrise.solver.engine.search;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.LoadBuilder;
import evenrise.model.plan.Plan;
import evenrise.model.project.Overlap;
import evenrise.model.project.Project;
import evenrise.model.project.Scatter;
import evenrise.model.project.Spread;
import evenrise.model.project.SwitchedBy;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.scatter.NodeScatter;
import evenrise.model.scatter.Trials;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.search.Plantful.Part;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Trials of plants as they are: by node, by system, behind contactors. */
class PlantTrialsTest {
    private static final long SOME_MOVES = 60;

    /** Nothing is left to chance but the closing time within the tolerance. */
    private static final Scatter CLOSING_ALONE = Scatter.builder()
            .closing(Spread.UNIFORM)
            .leastInrushPercent(100)
            .angleUpToHalfMillis(0)
            .meanVoltagePercent(100)
            .voltageDeviationPercent(0)
            .build();

    private static List<NodeScatter> trials(Layout layout, Scatter scatter, int count, int threads) {
        return Trials.of(layout, scatter, Optional.empty(), Optional.empty(), count, 7, threads);
    }

    private static Layout planned(Project project, long seed) {
        PlanningRequest request = new PlanningRequest(project, Optional.empty(), new Budget.Moves(SOME_MOVES), seed, 1);
        Plan plan = new Planner(request, progress -> {}).plan().plan();
        return Layout.of(project, Plans.judged(project, plan));
    }

    private static Set<Part> many(long seed) {
        return Plantful.some(seed, 35);
    }

    /** As the referee takes them: closing on time, idle currents as sines. */
    private static Project withoutChance(Project project) {
        return project.with()
                .timingToleranceSeconds(0)
                .loads(project.loads().stream()
                        .map(load -> load.with()
                                .thirdHarmonic(OptionalDouble.empty())
                                .crestFactor(OptionalDouble.empty())
                                .build())
                        .toList())
                .build();
    }

    private static void drawsTheRefereesPeaks(Project drawn, long seed) {
        Layout layout = planned(withoutChance(drawn), seed);

        List<NodeScatter> nodes = trials(layout, CLOSING_ALONE, 2, 1);

        assertThat(nodes).hasSameSizeAs(layout.nodes());
        for (int i = 0; i < nodes.size(); i++) {
            NodeFigures node = layout.nodes().get(i);
            double peak = layout.worstPeak(i).amps();
            assertThat(nodes.get(i).node()).isEqualTo(node.node());
            assertThat(nodes.get(i).greatestAmps())
                    .as("seed %d, %s", seed, node.node())
                    .isCloseTo(peak, within(1e-9 * Math.max(1, peak)));
        }
    }

    @ParameterizedTest
    @EnumSource
    void withoutChanceAreTheRefereesPeaksOfEachPart(Part part) {
        for (long seed = 1; seed <= 2; seed++) {
            drawsTheRefereesPeaks(Plantful.of(seed + 10L * part.ordinal(), EnumSet.of(part)), seed);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {401, 402, 403, 404, 405, 406, 407, 408, 409, 410, 411, 412})
    void withoutChanceAreTheRefereesPeaksOfManyPartsTogether(long seed) {
        drawsTheRefereesPeaks(Plantful.of(seed, many(seed)), seed);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {421, 422, 423, 424, 425, 426, 427, 428})
    void noTrialExceedsTheVoltageRangeAtAnyNode(long seed) {
        Layout layout = planned(Plantful.of(seed, many(seed)).withTimingToleranceSeconds(0.05), seed);

        for (Scatter scatter : List.of(Scatter.USUAL, CLOSING_ALONE)) {
            for (NodeScatter node : trials(layout, scatter, 200, 1)) {
                assertThat(node.greatestAmps()).as(node.node()).isLessThanOrEqualTo(node.rangeAmps() * (1 + 1e-9));
            }
        }
    }

    @Test
    void dependOnTheSeedAloneNotOnThreads() {
        Layout layout = planned(Plantful.of(431, EnumSet.allOf(Part.class)), 431);

        assertThat(trials(layout, Scatter.USUAL, 300, 1)).isEqualTo(trials(layout, Scatter.USUAL, 300, 3));
    }

    /** 100 A and 60 A without idle, in use 10 A and 20 A rms: max(100, 14.1) + 28.3, max(60, 28.3) + 14.1, or 100 + 60. */
    @ParameterizedTest
    @EnumSource(names = "TOGETHER", mode = EnumSource.Mode.EXCLUDE)
    void systemsMeetWhileTheOthersAreInUseOrAllAtOnce(Overlap overlap) {
        Project project = aProject()
                .boards(aBoard("B1"), aBoard("B2"))
                .loads(ofSystem("L1", "hall", 10, 100), ofSystem("L2", "annex", 20, 60))
                .with(it -> it.systems(List.of(system("hall"), system("annex"))).overlap(overlap))
                .build();
        Layout layout = Layout.of(
                project,
                aPlan().assignments(
                                anAssignment("L1").at("P1", 1).on("B1", 1),
                                anAssignment("L2").at("P1", 2).on("B2", 1))
                        .build());

        double drawn = trials(layout, CLOSING_ALONE, 1, 1).get(0).greatestAmps();

        assertThat(drawn).isCloseTo(overlap == Overlap.ANY ? 160 : 100 + Math.sqrt(2) * 20, within(1e-9));
    }

    /** A contactor's poles close together, so that two inrushes behind it always meet; two breakers' seldom do. */
    @Test
    void loadsBehindOneContactorCloseAtOneInstant() {
        LoadBuilder[] apart = {pulse("L1"), pulse("L2")};
        LoadBuilder[] behind = {
            pulse("L1").with(it -> it.switchedBy(SwitchedBy.CONTACTOR)),
            pulse("L2").with(it -> it.comesWith(Optional.of("L1")))
        };

        assertThat(median(apart, true)).isLessThan(150);
        assertThat(median(behind, false)).isCloseTo(200, within(0.01));
    }

    private static double median(LoadBuilder[] loads, boolean hasOwnOutput) {
        Project project = aProject()
                .timingToleranceSeconds(0.5)
                .boards(aBoard("B1"), aBoard("B2"))
                .loads(loads)
                .build();
        var second = anAssignment("L2").at("P1", 2);
        Layout layout = Layout.of(
                project,
                aPlan().assignments(
                                anAssignment("L1").at("P1", 1).on("B1", 1), hasOwnOutput ? second.on("B2", 1) : second)
                        .build());
        return trials(layout, CLOSING_ALONE, 400, 1).get(0).peakAmps().get(0).value();
    }

    private static LoadBuilder pulse(String id) {
        return aLoad(id).runningAmps(0).idleAmps(0).inrushPeakAmps(100).inrushHalfMillis(10);
    }

    private static LoadBuilder ofSystem(String id, String system, double runningAmps, double peakAmps) {
        return aLoad(id)
                .runningAmps(runningAmps)
                .idleAmps(0)
                .inrushPeakAmps(peakAmps)
                .with(it -> it.system(Optional.of(system)));
    }

    private static SwitchedSystem system(String id) {
        return SwitchedSystem.builder().id(id).build();
    }
}
