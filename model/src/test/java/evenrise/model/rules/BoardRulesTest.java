package evenrise.model.rules;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static evenrise.model.rules.Judging.broken;
import static evenrise.model.rules.Judging.brokenAsWritten;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.AssignmentBuilder;
import evenrise.model.PlanBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.project.Phase;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Rules on who is assigned, how boards are set and which output switches what. One load L1 on board B1, output 1. */
class BoardRulesTest {
    private static ProjectBuilder oneLoad() {
        return aProject().boards(aBoard("B1")).loads(aLoad("L1"));
    }

    private static ProjectBuilder twoLoads() {
        return aProject().boards(aBoard("B1")).loads(aLoad("L1"), aLoad("L2"));
    }

    private static PlanBuilder set() {
        return aPlan().board("B1", 0.5, 0.25);
    }

    private static AssignmentBuilder l1() {
        return anAssignment("L1").at("P1", 1).on("B1", 1);
    }

    @Nested
    class Assigned {
        @Test
        void isKeptByOneAssignmentEach() {
            assertThat(broken("assigned", oneLoad(), set().assignments(l1()))).isEmpty();
        }

        @Test
        void missesALoadWithoutAPlace() {
            assertThat(broken("assigned", oneLoad(), set()))
                    .containsExactly("load 'L1' has no assignment, exactly one is needed."
                            + " Maybe give it a free slot and a free output.");
        }

        @Test
        void countsEveryAssignmentBeyondTheFirst() {
            AssignmentBuilder again = anAssignment("L1").at("P1", 3).on("B1", 2);

            assertThat(broken("assigned", oneLoad(), set().assignments(l1(), again, l1())))
                    .hasSize(2)
                    .first()
                    .asString()
                    .contains("'L1'", "once more, in slot 3 of panel 'P1'", "Maybe delete");
        }

        @Test
        void refusesALoadTheProjectDoesNotHave() {
            AssignmentBuilder ghost = anAssignment("ghost").at("P1", 3).on("B1", 2);

            assertThat(broken("assigned", oneLoad(), set().assignments(l1(), ghost)))
                    .singleElement()
                    .asString()
                    .contains("'ghost'", "does not have");
        }
    }

    @Nested
    class BoardSetting {
        @Test
        void isKeptByTheLastSettingsOffered() {
            PlanBuilder plan = aPlan().board("B1", 2, 1).assignments(l1());

            assertThat(broken("board-setting", oneLoad(), plan)).isEmpty();
        }

        @Test
        void refusesADelayBetweenTwoThatAreOffered() {
            PlanBuilder plan = aPlan().board("B1", 1.9, 1).assignments(l1());

            assertThat(broken("board-setting", oneLoad(), plan))
                    .containsExactly("board 'B1' is set to a start delay of 1.9 s, its type 'eight' offers"
                            + " 0.0, 0.5, 1.0, 2.0 s. Maybe set 2 s, the nearest.");
        }

        @Test
        void refusesAStepThatIsNotOffered() {
            PlanBuilder plan = aPlan().board("B1", 2, 3).assignments(l1());

            assertThat(broken("board-setting", oneLoad(), plan))
                    .singleElement()
                    .asString()
                    .contains("step of 3 s", "0.25, 0.5, 1.0 s", "Maybe set 1 s");
        }

        @Test
        void missesABoardThatIsNotSet() {
            assertThat(broken("board-setting", oneLoad(), aPlan().assignments(l1())))
                    .singleElement()
                    .asString()
                    .contains("board 'B1' has no setting", "Maybe");
        }

        @Test
        void refusesASecondSettingAndAnUnknownBoard() {
            PlanBuilder plan = set().board("B1", 0.5, 0.25).board("B9", 0, 1).assignments(l1());

            assertThat(broken("board-setting", oneLoad(), plan))
                    .satisfiesExactly(
                            second -> assertThat(second).contains("'B1' is set once more"),
                            unknown -> assertThat(unknown).contains("board 'B9'", "does not have"));
        }

        @Test
        void lastSettingDecidesTheTimes() {
            PlanBuilder plan = set().board("B1", 2, 1).assignments(l1());

            Verdict verdict = Judging.verdict(oneLoad(), plan);

            assertThat(verdict.metrics().durationSeconds()).isEqualTo(2);
        }
    }

    @Nested
    class Output {
        @Test
        void isKeptByTheLastOutputOfTheBoard() {
            PlanBuilder plan = set().assignments(anAssignment("L1").at("P1", 1).on("B1", 8));

            assertThat(broken("output", oneLoad(), plan)).isEmpty();
        }

        @Test
        void refusesTheOutputAfterTheLast() {
            PlanBuilder plan = set().assignments(anAssignment("L1").at("P1", 1).on("B1", 9));

            assertThat(broken("output", oneLoad(), plan))
                    .containsExactly(
                            "load 'L1' is switched, but board 'B1' has outputs 1 to 8, not 9; one output of its own is"
                                    + " needed. Maybe move it to a free output of a board that reaches panel 'P1'.");
        }

        @Test
        void refusesOutputZeroAnUnknownBoardAndNoBoard() {
            assertThat(broken(
                            "output",
                            oneLoad(),
                            set().assignments(anAssignment("L1").on("B1", 0))))
                    .singleElement()
                    .asString()
                    .contains("not 0");
            assertThat(broken(
                            "output",
                            oneLoad(),
                            set().assignments(anAssignment("L1").on("B9", 1))))
                    .singleElement()
                    .asString()
                    .contains("no board 'B9'");
            assertThat(broken("output", oneLoad(), set().assignments(anAssignment("L1"))))
                    .singleElement()
                    .asString()
                    .contains("has no board");
        }

        @Test
        void givesASharedOutputToTheFirstAndNamesBoth() {
            PlanBuilder plan =
                    set().assignments(l1(), anAssignment("L2").at("P1", 3).on("B1", 1));

            assertThat(broken("output", twoLoads(), plan))
                    .containsExactly("load 'L2' and load 'L1' share output 1 of board 'B1'; one load an output is"
                            + " allowed. Maybe move one of them to a free output.");
        }

        @Test
        void refusesEverySwitchingPartOfAnUnswitchedLoad() {
            ProjectBuilder project =
                    aProject().boards(aBoard("B1")).loads(aLoad("L1").unswitched());
            PlanBuilder plan = set().assignments(anAssignment("L1")
                    .at("P1", 1, Phase.A)
                    .on("B1", 2)
                    .onSeconds(1)
                    .offSeconds(2));

            assertThat(brokenAsWritten("output", project, plan))
                    .satisfiesExactly(
                            board -> assertThat(board).contains("'L1' is not switched, but has board 'B1'", "Maybe"),
                            output -> assertThat(output).contains("output 2"),
                            on -> assertThat(on).contains("switch-on time 1 s"),
                            off -> assertThat(off).contains("switch-off time 2 s"));
        }

        @Test
        void isKeptByAnUnswitchedLoadWithoutAny() {
            ProjectBuilder project =
                    aProject().boards(aBoard("B1")).loads(aLoad("L1").unswitched());

            assertThat(broken("output", project, set().assignments(anAssignment("L1"))))
                    .isEmpty();
        }
    }

    @Nested
    class Reach {
        private ProjectBuilder twoPanels(String... reaches) {
            return aProject()
                    .panels(aPanel("P1"), aPanel("P2"))
                    .boards(aBoard("B1").in("P1").reaches(reaches))
                    .loads(aLoad("L1"));
        }

        @Test
        void isKeptByTheBoardsOwnPanelWhereNothingIsSaid() {
            assertThat(broken("reach", twoPanels(), set().assignments(l1()))).isEmpty();
        }

        @Test
        void isKeptByANeighbourThatTheBoardReaches() {
            PlanBuilder plan = set().assignments(anAssignment("L1").at("P2", 1).on("B1", 1));

            assertThat(broken("reach", twoPanels("P1", "P2"), plan)).isEmpty();
        }

        @Test
        void refusesANeighbourThatItDoesNotReach() {
            PlanBuilder plan = set().assignments(anAssignment("L1").at("P2", 1).on("B1", 1));

            assertThat(broken("reach", twoPanels(), plan))
                    .containsExactly("load 'L1' in panel 'P2' is on board 'B1', which reaches only 'P1'."
                            + " Maybe move the load to such a panel, or to a board that reaches its own.");
        }

        @Test
        void refusesTheBoardsOwnPanelWhereOnlyOthersAreNamed() {
            assertThat(broken("reach", twoPanels("P2"), set().assignments(l1())))
                    .hasSize(1);
        }
    }

    /** L1 on output 1 (0.5 s), L2 on output 2 (0.75 s): the sequence takes 0.75 s. */
    @Nested
    class StepTime {
        private PlanBuilder times(double on, double off) {
            return set().assignments(
                            l1().at("P1", 1, Phase.A).onSeconds(on).offSeconds(off),
                            anAssignment("L2")
                                    .at("P1", 3, Phase.B)
                                    .on("B1", 2)
                                    .onSeconds(0.75)
                                    .offSeconds(0));
        }

        @Test
        void isKeptByTheTimesOfTheOutputs() {
            assertThat(brokenAsWritten("step-time", twoLoads(), times(0.5, 0.25)))
                    .isEmpty();
        }

        @Test
        void allowsNearlyHalfAMillisecond() {
            assertThat(brokenAsWritten("step-time", twoLoads(), times(0.500499, 0.249501)))
                    .isEmpty();
        }

        @Test
        void refusesMoreThanHalfAMillisecondForOnAndForOff() {
            assertThat(brokenAsWritten("step-time", twoLoads(), times(0.500501, 0.249499)))
                    .satisfiesExactly(
                            on -> assertThat(on)
                                    .contains("'L1'", "on at 0.501 s", "output 1 of board 'B1' gives 0.5 s", "Maybe"),
                            off -> assertThat(off).contains("off at 0.249 s", "gives 0.25 s"));
        }

        @Test
        void refusesAbsentTimes() {
            PlanBuilder plan = set().assignments(l1().at("P1", 1, Phase.A));

            assertThat(brokenAsWritten("step-time", oneLoad(), plan))
                    .hasSize(2)
                    .allSatisfy(message -> assertThat(message).contains("no time"));
        }
    }

    @Nested
    class BoardsInChains {
        @Test
        void followTheLastUsedOutput() {
            ProjectBuilder project = aProject()
                    .boardTypes(aBoardType("eight"))
                    .boards(aBoard("B1"), aBoard("B2").after("B1"))
                    .loads(aLoad("L1"), aLoad("L2"));
            PlanBuilder plan = aPlan().board("B1", 2, 1)
                    .board("B2", 0.5, 1)
                    .assignments(
                            anAssignment("L1").at("P1", 1).on("B1", 3),
                            anAssignment("L2").at("P1", 3).on("B2", 1));

            Verdict verdict = Judging.verdict(project, plan);

            // B1's output 3: 2 + 2·1 = 4 s; B2 then waits 0.5 s
            assertThat(verdict.violations()).isEmpty();
            assertThat(verdict.metrics().durationSeconds()).isEqualTo(4.5);
        }
    }
}
