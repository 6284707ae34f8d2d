package evenrise.solver.report;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.PlanBuilder;
import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.MadeBy;
import evenrise.model.plan.Metrics;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import evenrise.solver.bounds.ProvenBounds;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/**
 * One panel, two loads on different phases:
 *
 * <pre>
 * P1  slot 1 (A)  dsp, unswitched 10 A
 *     slot 3 (B)  amp, 20 A, peak 100 A, half in 10 ms, output 2 of B1 at 0.5 + 0.25 = 0.75 s
 * </pre>
 */
class AuditTextTest {
    private static final String SHA = "ab12";

    private final Project project = aProject()
            .name("Hall")
            .supply(aSupply())
            .panels(aPanel("P1"))
            .boards(aBoard("B1").in("P1"))
            .loads(
                    aLoad("dsp").processing().unswitched().runningAmps(10),
                    aLoad("amp")
                            .name("Sub left")
                            .amplifier()
                            .runningAmps(20)
                            .idleAmps(10)
                            .inrushPeakAmps(100))
            .build();

    private final Plan plan = PlanFinisher.finish(
            project,
            aPlan().board("B1", 0.5, 0.25)
                    .assignments(
                            anAssignment("dsp").at("P1", 1),
                            anAssignment("amp").at("P1", 3).on("B1", 2))
                    .build(),
            MadeBy.builder()
                    .softwareVersion("test")
                    .projectSha256(SHA)
                    .seed(1)
                    .threads(1)
                    .movesAllowed(1)
                    .build(),
            ProvenBounds.of(project));

    @Nested
    class OfEqualFindings {
        /** Twelve amplifiers of one name that may sit in P2 alone, all in P1: one line a rule, or twelve. */
        @Test
        void showsThemAsOneOrEachByItself() {
            Project racks = aProject()
                    .panels(aPanel("P1"), aPanel("P2"))
                    .loads(IntStream.rangeClosed(1, 12)
                            .mapToObj(i -> aLoad("amp-" + i)
                                    .name("4-channel amplifier " + i)
                                    .unswitched()
                                    .panels("P2"))
                            .toList())
                    .build();
            PlanBuilder inP1 = aPlan();
            IntStream.rangeClosed(1, 12)
                    .forEach(i -> inP1.assignments(anAssignment("amp-" + i).at("P1", i)));
            Evaluation evaluation = Evaluation.of(
                    Layout.of(racks, PlanFinisher.timed(racks, inP1.build())), () -> ProvenBounds.of(racks));
            AuditFile sheet = AuditFile.of(evaluation, SHA, List.of());

            String folded = String.join("\n", squeezed(AuditText.lines(evaluation, sheet, false, Paint.NONE)));
            String all = String.join("\n", squeezed(AuditText.lines(evaluation, sheet, true, Paint.NONE)));

            assertThat(folded)
                    .contains(
                            "1 rule broken, in 12 places.",
                            "panel-allowed: 12 places",
                            "12 × 4-channel amplifier: load 'amp-1' sits in panel 'P1'");
            assertThat(folded).doesNotContain("load 'amp-2' sits");
            assertThat(all).contains("load 'amp-1' sits", "load 'amp-12' sits").doesNotContain("12 ×");
        }
    }

    @Nested
    class OfASoundPlan {
        @Test
        void saysThatNoRuleIsBrokenAndThatTheProjectIsTheSame() {
            assertThat(audit(plan, SHA))
                    .contains("  No hard rule is broken.", "  The project file is the one the plan was made from.");
        }

        /** A 10, B 20, C 0: mean 10, deviation 10, 100 %; limit 400·0.8 = 320, spare 300. */
        @Test
        void showsRunningCurrentBesideItsLimit() {
            assertThat(squeezed(audit(plan, SHA))).contains("supply 10.0 20.0 0.0 10.0 10.0 100.00 320.0 300.0");
        }

        /** Three phases, pf 1: |10∠0 + 20∠-120| = √(10² + 20² - 10·20) = 17.3; with the 20 A alone 20. */
        @Test
        void showsTheNeutralBesideItsLimit() {
            assertThat(squeezed(audit(plan, SHA))).contains("supply 17.3 20.0 400.0 380.0", "P1 17.3 20.0 225.0 205.0");
        }

        @Test
        void showsHowTheBoardIsSetAndUsed() {
            assertThat(squeezed(audit(plan, SHA))).contains("B1 eight P1 - 0.5 0.25 1 8 0.75 0.75");
        }

        /** Base √2·10 = 14.1, the rest of the 100 A is excess; dsp is on another phase. */
        @Test
        void showsWhatMakesThePeak() {
            assertThat(audit(plan, SHA)).contains("What makes the peak of 100.0 A on phase B at 0.75 s");
            assertThat(squeezed(audit(plan, SHA))).contains("amp Sub left amplifier 0.75 100.0 14.1 85.9 100.0");
        }

        @Test
        void carriesEveryCaution() {
            assertThat(String.join(" ", audit(plan, SHA)).replaceAll(" +", " ")).contains(Cautions.ALL);
        }

        @Test
        void keepsWithinAHundredColumns() {
            assertThat(audit(plan, SHA))
                    .allSatisfy(line -> assertThat(DisplayWidth.of(line)).isLessThanOrEqualTo(Table.WIDEST));
        }
    }

    @Nested
    class OfAPlanThatIsNotWhatItSays {
        @Test
        void saysThatTheProjectHasChanged() {
            assertThat(audit(plan, "cd34")).anyMatch(line -> line.contains("is not the one the plan was made from"));
        }

        @Test
        void setsStatedFiguresBesideRecomputedOnes() {
            Metrics figures = plan.metrics().orElseThrow();
            Metrics wrong = figures.with().peakInrushAmps(99).hardViolations(3).build();

            List<String> lines = squeezed(audit(stating(wrong), SHA));

            assertThat(lines).contains("peak_inrush_a 99.000000 100.000000", "hard_violations 3 0");
            assertThat(lines).noneMatch(line -> line.startsWith("objective "));
        }

        /** The objective is 100 + 10 + 10 + 0.1·0.75 ampere-equivalents: see OfASoundPlan. */
        @Test
        void holdsGapAndOptimalityAgainstTheFileOwnBound() {
            double objective = plan.metrics().orElseThrow().objective();
            Plan boasting = plan.with()
                    .bounds(plan.bounds().orElseThrow().withObjective(objective / 2))
                    .gapPercent(1)
                    .optimal(true)
                    .build();

            List<String> lines = squeezed(audit(boasting, SHA));

            assertThat(lines).contains("gap_pct 1.000000 50.000000", "optimal true false");
        }

        @Test
        void saysThatABoundAboveTheObjectiveDoesNotFollow() {
            double objective = plan.metrics().orElseThrow().objective();
            Plan boasting = plan.with()
                    .bounds(plan.bounds().orElseThrow().withObjective(objective + 1))
                    .gapPercent(100 * (-1) / objective)
                    .build();

            assertThat(squeezed(audit(boasting, SHA))).anyMatch(line -> line.startsWith("bounds.objective"));
        }

        @Test
        void saysWhatItDoesNotProveItself() {
            double objective = plan.metrics().orElseThrow().objective();
            double own = ProvenBounds.of(project).objective();
            Plan claimed = plan.with()
                    .bounds(plan.bounds().orElseThrow().withObjective(objective))
                    .gapPercent(0)
                    .optimal(true)
                    .build();

            assertThat(own).isLessThan(objective - 0.01);
            assertThat(String.join(" ", squeezed(audit(claimed, SHA))))
                    .contains("The plan file calls itself optimal; this audit does not prove it.")
                    .contains("is above what this audit proves");
        }

        @Test
        void takesRoundingForNoDifference() {
            Metrics figures = plan.metrics().orElseThrow();
            Metrics rounded = figures.with()
                    .peakInrushAmps(figures.peakInrushAmps() + 5e-7)
                    .supplyNeutralAmps(figures.supplyNeutralAmps() - 5e-7)
                    .build();

            assertThat(audit(stating(rounded), SHA)).noneMatch(line -> line.contains("Recomputed"));
        }
    }

    @Nested
    class OfABrokenPlan {
        private final Plan empty = aPlan().board("B1", 0.5, 0.25).build();

        @Test
        void listsWhatIsBrokenByRule() {
            List<String> lines = audit(empty, SHA);

            assertThat(lines).contains("  1 rule broken, in 2 places.", "  assigned: 2 places");
            assertThat(lines)
                    .filteredOn(line -> line.startsWith("  - ") && line.contains("'amp'"))
                    .isNotEmpty();
        }
    }

    @Nested
    class OfManyLoads {
        private final Project large = aProject()
                .panels(aPanel("P1"))
                .loads(IntStream.rangeClosed(1, 20)
                        .mapToObj(i -> aLoad("L" + i).unswitched().runningAmps(1))
                        .toList())
                .build();

        /** Fourteen of them, two in each of rows 1, 4, 7, …: all on phase A. */
        private final Plan onOnePhase = PlanFinisher.finish(
                large,
                aPlan().assignments(IntStream.rangeClosed(1, 14)
                                .mapToObj(i -> anAssignment("L" + i).at("P1", 1 + 6 * ((i - 1) / 2) + (i - 1) % 2))
                                .toArray(evenrise.model.AssignmentBuilder[]::new))
                        .build(),
                MadeBy.builder()
                        .softwareVersion("test")
                        .projectSha256(SHA)
                        .seed(1)
                        .threads(1)
                        .build(),
                ProvenBounds.of(large));

        @Test
        void showsTheFirstFewAndSumsTheRestUnlessAllIsAskedFor() {
            Layout layout = Layout.of(large, onOnePhase);
            AuditFile sheet = AuditFile.of(evaluation(layout), SHA, List.of());

            List<String> few = squeezed(PeakTable.lines(sheet.metrics(), sheet.peakShares(), 10, Paint.NONE));
            List<String> all = squeezed(PeakTable.lines(sheet.metrics(), sheet.peakShares(), 100, Paint.NONE));

            // Four more at √2 A each: 5.7 A of 14·√2.
            assertThat(few).hasSize(13).last().isEqualTo("and 4 more 5.7 5.7 0.0 28.6");
            assertThat(all).hasSize(16);
        }
    }

    private List<String> audit(Plan judged, String sha) {
        Layout layout = Layout.of(project, judged);
        Evaluation evaluation = evaluation(layout);
        return AuditText.lines(evaluation, AuditFile.of(evaluation, sha, List.of()), false, Paint.NONE);
    }

    private static Evaluation evaluation(Layout layout) {
        return Evaluation.of(layout, () -> ProvenBounds.of(layout.project()));
    }

    private Plan stating(Metrics metrics) {
        return plan.withMetrics(Optional.of(metrics));
    }

    private static List<String> squeezed(List<String> lines) {
        List<String> squeezed = new ArrayList<>();
        lines.forEach(line -> squeezed.add(line.strip().replaceAll(" +", " ")));
        return squeezed;
    }
}
