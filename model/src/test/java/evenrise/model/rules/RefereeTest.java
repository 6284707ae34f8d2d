package evenrise.model.rules;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.ARandomProject;
import evenrise.model.PlanBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.plan.SubjectKind;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class RefereeTest {
    /**
     * Phase A: L1 (30 A running, no idle, 100 A at switch-on) at 0 s, then L2 (10 A running, no idle, 60 A) at 1 s, when L1
     * has halved. Panel P1 holds L1, panel P2 holds L2 and the unswitched L3 (6 A on B).
     */
    private static ProjectBuilder project() {
        return aProject()
                .panels(aPanel("P1"), aPanel("P2"))
                .boards(aBoard("B1").reaches("P1", "P2"), aBoard("B2"))
                .loads(
                        aLoad("L1")
                                .runningAmps(30)
                                .idleAmps(0)
                                .inrushPeakAmps(100)
                                .inrushHalfMillis(1000),
                        aLoad("L2")
                                .runningAmps(10)
                                .idleAmps(0)
                                .inrushPeakAmps(60)
                                .inrushHalfMillis(10),
                        aLoad("L3").runningAmps(6).unswitched());
    }

    private static PlanBuilder plan() {
        return aPlan().board("B1", 0, 1)
                .board("B2", 2, 1)
                .assignments(
                        anAssignment("L1").at("P1", 1).on("B1", 1),
                        anAssignment("L2").at("P2", 1).on("B1", 2),
                        anAssignment("L3").at("P2", 3));
    }

    @Nested
    class Figures {
        @Test
        void areThoseOfTheLayout() {
            Verdict verdict = Judging.verdict(project(), plan());

            // supply 40, 6, 0 A: mean 15.333, deviation 24.667
            assertThat(verdict.violations()).isEmpty();
            assertThat(verdict.metrics().peakInrushAmps()).isCloseTo(110, within(1e-9));
            assertThat(verdict.metrics().peakPhase()).isEqualTo(Phase.A);
            assertThat(verdict.metrics().peakAtSeconds()).isEqualTo(1);
            assertThat(verdict.metrics().supplyImbalancePercent()).isCloseTo(100 * 24.667 / 15.333, within(0.01));
            // P1 has all its current on one phase of three: (30 − 10)/10
            assertThat(verdict.metrics().worstPanelImbalancePercent()).isCloseTo(200, within(1e-9));
            assertThat(verdict.metrics().durationSeconds()).isEqualTo(1);
            assertThat(verdict.metrics().boardsUsed()).isEqualTo(1);
        }

        @Test
        void comeForTheSupplyAndEveryPanelInTheProjectsOrder() {
            assertThat(Judging.verdict(project(), plan()).nodes())
                    .extracting(NodeFigures::node)
                    .containsExactly("supply", "P1", "P2");
        }

        @Test
        void nameWhatMakesThePeakLargestFirst() {
            assertThat(Judging.verdict(project(), plan()).peakShares())
                    .extracting(PeakShare::load)
                    .containsExactly("L2", "L1");
        }

        /**
         * Tolerance 0.1 s, halving every 0.5 s: L1 came on at 1 s, L2 at 2.2 s, when L1 has died down for 1.2 − 0.2 s, two
         * half-lives. Bases 10√2 = 14.142 A: 14.142 + (80 − 14.142)/4 = 30.607 A beside 80 A. L3 draws nothing yet.
         */
        @Test
        void takeSharesAtTheInstantOfThePeak() {
            ProjectBuilder three = aProject()
                    .timingToleranceSeconds(0.1)
                    .boardTypes(aBoardType("eight").startDelaySeconds(1).stepSeconds(1.2))
                    .boards(aBoard("B1"))
                    .loads(
                            aLoad("L1").idleAmps(10).inrushPeakAmps(80).inrushHalfMillis(500),
                            aLoad("L2").idleAmps(10).inrushPeakAmps(80).inrushHalfMillis(500),
                            aLoad("L3").idleAmps(0).inrushPeakAmps(5).inrushHalfMillis(1));
            PlanBuilder plan = aPlan().board("B1", 1, 1.2)
                    .assignments(
                            anAssignment("L1").at("P1", 1).on("B1", 1),
                            anAssignment("L2").at("P1", 7).on("B1", 2),
                            anAssignment("L3").at("P1", 13).on("B1", 3));

            Verdict verdict = Judging.verdict(three, plan);

            assertThat(verdict.metrics().peakInrushAmps()).isCloseTo(110.607, within(0.001));
            assertThat(verdict.peakShares()).extracting(PeakShare::load).containsExactly("L2", "L1");
            assertThat(verdict.peakShares().get(1).amps()).isCloseTo(30.607, within(0.001));
            assertThat(verdict.peakShares().get(1).baseAmps()).isCloseTo(14.142, within(0.001));
        }

        /** 10 A at unity and 10 A at power factor 0.5 on one phase: 20 A as numbers, 20·cos 30° = 17.321 A as a meter shows. */
        @Test
        void tellWhatAMeterShows() {
            ProjectBuilder two = aProject()
                    .loads(
                            aLoad("L1").unswitched().runningAmps(10),
                            aLoad("L2").unswitched().runningAmps(10).powerFactor(0.5));
            PlanBuilder plan = aPlan().assignments(
                            anAssignment("L1").at("P1", 1), anAssignment("L2").at("P1", 7));

            NodeFigures supply = Judging.verdict(two, plan).nodes().get(0);

            assertThat(supply.runningAmps().get(Phase.A)).isEqualTo(20);
            assertThat(supply.phasorAmps().get(Phase.A)).isCloseTo(17.3205, within(0.0001));
        }

        @Test
        void takeTheFirstOfEquallyHighPhases() {
            ProjectBuilder equal =
                    aProject().loads(aLoad("L1").unswitched(), aLoad("L2").unswitched());
            PlanBuilder onCAndB = aPlan().assignments(
                            anAssignment("L1").at("P1", 5), anAssignment("L2").at("P1", 3));

            assertThat(Judging.verdict(equal, onCAndB).metrics().peakPhase()).isEqualTo(Phase.B);
        }

        @Test
        void areZeroForAnEmptyPlan() {
            Verdict verdict = Referee.judge(aProject().build(), aPlan().build());

            assertThat(verdict.metrics().objective()).isZero();
            assertThat(verdict.metrics().hardViolations()).isEqualTo(1);
            assertThat(verdict.peakShares()).isEmpty();
        }
    }

    @Nested
    class WeighedFigures {
        @Test
        void addUpByTheProjectsWeights() {
            ObjectiveWeights weights = ObjectiveWeights.builder()
                    .peakInrush(2)
                    .supplyImbalance(3)
                    .panelImbalance(5)
                    .duration(7)
                    .boards(11)
                    .build();

            Verdict verdict = Judging.verdict(project().objective(weights), plan());

            // peak 110; supply deviation 40 − 46/3; P1 20; P2 (10, 6, 0) 16/3; 1 s; 1 board
            double expected = 2 * 110 + 3 * (40 - 46 / 3.0) + 5 * (20 + 16 / 3.0) + 7 * 1 + 11 * 1;
            assertThat(verdict.metrics().objective()).isCloseTo(expected, within(1e-9));
        }
    }

    @Nested
    @Tag("random")
    class WhateverThePlan {
        @Test
        void keepsPlantedPlans() {
            for (long seed = 0; seed < 100; seed++) {
                ARandomProject.Planted planted = ARandomProject.planted(seed);
                Plan finished =
                        PlanFinisher.finish(planted.project(), planted.plan(), Judging.MADE_BY, Judging.NOTHING_PROVEN);

                assertThat(finished.violations()).as("seed %d", seed).isEmpty();
            }
        }

        @Test
        void answersAnyPlanWithAVerdict() {
            for (long seed = 0; seed < 300; seed++) {
                Project project = ARandomProject.of(seed);
                Plan plan = junk(project, new Random(seed));

                Verdict verdict = Referee.judge(project, plan);
                Plan finished = PlanFinisher.finish(project, plan, Judging.MADE_BY, Judging.NOTHING_PROVEN);

                assertThat(verdict.metrics().hardViolations())
                        .as("seed %d", seed)
                        .isEqualTo(verdict.violations().size())
                        .isPositive();
                assertThat(finished.assignments()).hasSameSizeAs(plan.assignments());
                assertThat(verdict.violations())
                        .allSatisfy(each -> assertThat(each.message()).endsWith(". Maybe " + each.cure() + "."))
                        .allSatisfy(
                                each -> assertThat(Docs.kindsOf(each.rule())).contains(each.kind()))
                        .allSatisfy(each -> assertThat(each.message())
                                .contains(each.mainSubject()
                                        .filter(first -> first.kind() != SubjectKind.SUPPLY)
                                        .map(first -> "'" + first.id() + "'")
                                        .orElse("the supply")));
            }
        }

        /** Places at random, most of them wrong, and some parts that the project does not have. */
        private Plan junk(Project project, Random random) {
            List<String> loads = new ArrayList<>(List.of("no such load"));
            project.loads().forEach(load -> loads.add(load.id()));
            List<String> panels = new ArrayList<>(List.of("no such panel"));
            project.panels().forEach(panel -> panels.add(panel.id()));
            List<String> boards = new ArrayList<>(List.of("no such board"));
            project.boards().forEach(board -> boards.add(board.id()));
            List<BoardSetting> settings = new ArrayList<>();
            boards.forEach(board -> settings.add(new BoardSetting(board, random.nextInt(9), random.nextInt(3))));
            List<Assignment> assignments = new ArrayList<>();
            for (int i = 0; i < 2 * loads.size(); i++) {
                assignments.add(Assignment.builder()
                        .load(any(loads, random))
                        .panel(any(panels, random))
                        .slot(any(List.of(1, 2, 3, 7, 12, 0, -9, Integer.MAX_VALUE, Integer.MIN_VALUE), random))
                        .phases(random.nextBoolean() ? List.of() : List.of(Phase.C, Phase.A))
                        .board(random.nextBoolean() ? Optional.empty() : Optional.of(any(boards, random)))
                        .output(any(
                                List.of(
                                        OptionalInt.empty(),
                                        OptionalInt.of(1),
                                        OptionalInt.of(2),
                                        OptionalInt.of(0),
                                        OptionalInt.of(Integer.MAX_VALUE)),
                                random))
                        .onSeconds(
                                random.nextBoolean() ? OptionalDouble.empty() : OptionalDouble.of(-random.nextInt(5)))
                        .build());
            }
            return Plan.builder().boards(settings).assignments(assignments).build();
        }

        private <T> T any(List<T> list, Random random) {
            return list.get(random.nextInt(list.size()));
        }
    }
}
