package evenrise.model.rules;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static evenrise.model.rules.Judging.broken;
import static evenrise.model.rules.Judging.brokenAsWritten;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.PanelBuilder;
import evenrise.model.PlanBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.plan.BrokenRule;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.Phase;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Rules on panels, slots and phases. Loads here are unswitched, except where a rule is about switching. */
class PlaceRulesTest {
    private static ProjectBuilder panels(PanelBuilder... panels) {
        return aProject().panels(panels);
    }

    private static LoadBuilder load(String id) {
        return aLoad(id).unswitched();
    }

    private static PlanBuilder at(String panel, int slot) {
        return aPlan().assignments(anAssignment("L1").at(panel, slot));
    }

    private static PlanBuilder pair(String panel1, int slot1, String panel2, int slot2) {
        return aPlan().assignments(
                        anAssignment("L1").at(panel1, slot1), anAssignment("L2").at(panel2, slot2));
    }

    @Nested
    class Phases {
        private ProjectBuilder twoPole() {
            return panels(aPanel("P1")).loads(load("L1").twoPole());
        }

        @Test
        void isKeptByThePhasesOfTheSlotsInAnyOrder() {
            PlanBuilder plan = aPlan().assignments(anAssignment("L1").at("P1", 1, Phase.B, Phase.A));

            assertThat(brokenAsWritten("phase", twoPole(), plan)).isEmpty();
        }

        @Test
        void refusesOtherPhases() {
            PlanBuilder plan = aPlan().assignments(anAssignment("L1").at("P1", 1, Phase.A, Phase.C));

            assertThat(brokenAsWritten("phase", twoPole(), plan))
                    .containsExactly("load 'L1': the plan says phases A, C, but slots 1, 3 of panel 'P1' lie on A, B."
                            + " Maybe the slot was changed by hand: write A, B.");
        }

        @Test
        void refusesAnAbsentPhase() {
            PlanBuilder plan = aPlan().assignments(anAssignment("L1").at("P1", 1));

            assertThat(brokenAsWritten("phase", twoPole(), plan))
                    .singleElement()
                    .asString()
                    .contains("says no phase");
        }
    }

    @Nested
    class Slot {
        @Test
        void isKeptByABreakerWhoseLastPoleIsInTheLastSlot() {
            // slots 8, 10, 12 of 12
            assertThat(broken(
                            "slot",
                            panels(aPanel("P1").slots(12)).loads(load("L1").threePole()),
                            at("P1", 8)))
                    .isEmpty();
        }

        @Test
        void refusesABreakerWhoseLastPoleIsBeyondTheLastSlot() {
            assertThat(broken(
                            "slot",
                            panels(aPanel("P1").slots(12)).loads(load("L1").threePole()),
                            at("P1", 9)))
                    .containsExactly(
                            "load 'L1' (3 poles) does not fit at slot 9 of panel 'P1', whose slots are 1 to 12."
                                    + " Maybe move it to a lower slot or to another panel.");
        }

        @Test
        void refusesSlotsThatNoPanelHas() {
            ProjectBuilder project = panels(aPanel("P1")).loads(load("L1").threePole());

            for (int slot : new int[] {0, -1, 43, Integer.MIN_VALUE, Integer.MAX_VALUE}) {
                assertThat(broken("slot", project, at("P1", slot))).hasSize(1);
            }
        }

        @Test
        void refusesAPanelTheProjectDoesNotHave() {
            assertThat(broken("slot", panels(aPanel("P1")).loads(load("L1")), at("P9", 1)))
                    .singleElement()
                    .asString()
                    .contains("panel 'P9'", "does not have", "Maybe");
        }

        @Test
        void isKeptByBreakersSideBySide() {
            ProjectBuilder project = panels(aPanel("P1")).loads(load("L1").twoPole(), load("L2"));

            // L1 takes 1 and 3, L2 the right side's 2, then the slot after L1
            assertThat(broken("slot", project, pair("P1", 1, "P1", 2))).isEmpty();
            assertThat(broken("slot", project, pair("P1", 1, "P1", 5))).isEmpty();
        }

        @Test
        void refusesASlotTakenByAnotherPole() {
            ProjectBuilder project = panels(aPanel("P1")).loads(load("L1").twoPole(), load("L2"));

            assertThat(broken("slot", project, pair("P1", 1, "P1", 3)))
                    .containsExactly("load 'L2' takes slot 3 of panel 'P1', which is taken by load 'L1'; one breaker a"
                            + " slot is allowed. Maybe move it to a free slot.");
        }

        @Test
        void refusesAReservedSlot() {
            ProjectBuilder project = panels(aPanel("P1").reservedSlots(3)).loads(load("L1"));

            assertThat(broken("slot", project, at("P1", 3)))
                    .singleElement()
                    .asString()
                    .contains("slot 3 of panel 'P1', which is reserved");
            assertThat(broken("slot", project, at("P1", 5))).isEmpty();
        }

        @Test
        void refusesPolesThatTouchOnePhaseTwice() {
            ProjectBuilder project = panels(aPanel("P1").phaseRotation(Phase.A, Phase.A, Phase.B))
                    .loads(load("L1").twoPole());

            assertThat(broken("slot", project, at("P1", 1)))
                    .singleElement()
                    .asString()
                    .contains("has 2 poles", "slots 1, 3", "lie on phases A, A", "Maybe");
            assertThat(broken("slot", project, at("P1", 3))).isEmpty();
        }
    }

    @Nested
    class SwitchedSlot {
        private ProjectBuilder project(LoadBuilder load) {
            return panels(aPanel("P1").switchedSlots(1, 3, 5))
                    .boards(aBoard("B1"))
                    .loads(load);
        }

        private PlanBuilder onBoard(int slot) {
            return aPlan().board("B1", 0, 1)
                    .assignments(anAssignment("L1").at("P1", slot).on("B1", 1));
        }

        @Test
        void isKeptUpToTheLastSuchSlot() {
            assertThat(broken("switched-slot", project(aLoad("L1").twoPole()), onBoard(3)))
                    .isEmpty();
        }

        @Test
        void refusesEverySlotThatTakesNone() {
            assertThat(broken("switched-slot", project(aLoad("L1").twoPole()), onBoard(5)))
                    .containsExactly("load 'L1' is switched, but slot 7 of panel 'P1' takes no switched breaker; slots"
                            + " 1, 3, 5 do. Maybe swap it with an unswitched load, or move it to another panel.");
            assertThat(broken("switched-slot", project(aLoad("L1").twoPole()), onBoard(7)))
                    .hasSize(2);
        }

        @Test
        void leavesUnswitchedLoadsAlone() {
            PlanBuilder plan =
                    aPlan().board("B1", 0, 1).assignments(anAssignment("L1").at("P1", 7));

            assertThat(broken("switched-slot", project(load("L1")), plan)).isEmpty();
        }

        @Test
        void refusesEverySlotOfAPanelThatTakesNone() {
            ProjectBuilder project =
                    panels(aPanel("P1").switchedSlots()).boards(aBoard("B1")).loads(aLoad("L1"));

            assertThat(broken("switched-slot", project, onBoard(1)))
                    .singleElement()
                    .asString()
                    .contains("none does");
        }
    }

    @Nested
    class PanelAllowed {
        private ProjectBuilder project(String... allowed) {
            return panels(aPanel("P1"), aPanel("P2"), aPanel("P3"))
                    .loads(load("L1").panels(allowed));
        }

        @Test
        void isKeptByEachAllowedPanel() {
            assertThat(broken("panel-allowed", project("P1", "P2"), at("P1", 1)))
                    .isEmpty();
            assertThat(broken("panel-allowed", project("P1", "P2"), at("P2", 1)))
                    .isEmpty();
        }

        @Test
        void isKeptByAnyPanelWhereNoneIsNamed() {
            assertThat(broken("panel-allowed", project(), at("P3", 1))).isEmpty();
        }

        @Test
        void refusesAnother() {
            assertThat(broken("panel-allowed", project("P1", "P2"), at("P3", 1)))
                    .containsExactly("load 'L1' sits in panel 'P3', allowed are 'P1', 'P2'."
                            + " Maybe move it there, or allow panel 'P3'.");
        }
    }

    @Nested
    class Fixed {
        private ProjectBuilder project(LoadBuilder load) {
            return panels(aPanel("P1"), aPanel("P2"))
                    .boards(aBoard("B1").reaches("P1", "P2"), aBoard("B2").reaches("P1", "P2"))
                    .loads(load);
        }

        private LoadBuilder fixed() {
            return aLoad("L1").fixedPanel("P1").fixedSlot(3).fixedBoard("B1").fixedOutput(4);
        }

        private PlanBuilder place(String panel, int slot, String board, int output) {
            return aPlan().board("B1", 0, 1)
                    .board("B2", 0, 1)
                    .assignments(anAssignment("L1").at(panel, slot).on(board, output));
        }

        @Test
        void isKeptByTheFixedPlace() {
            assertThat(broken("fixed", project(fixed()), place("P1", 3, "B1", 4)))
                    .isEmpty();
        }

        @Test
        void refusesEachPartThatDiffers() {
            assertThat(broken("fixed", project(fixed()), place("P2", 5, "B2", 6)))
                    .satisfiesExactly(
                            panel -> assertThat(panel)
                                    .isEqualTo("load 'L1' is fixed at panel 'P1', but the plan has panel 'P2'."
                                            + " Maybe move it back, or release it in the project."),
                            slot -> assertThat(slot).contains("slot '3'", "slot '5'"),
                            board -> assertThat(board).contains("board 'B1'", "board 'B2'"),
                            output -> assertThat(output).contains("output '4'", "output '6'"));
        }

        /** Output 4 with steps of 1 s comes on at 3 s; half a millisecond is as good. */
        @Test
        void isKeptByTheFixedTimeAndNoOther() {
            assertThat(broken("fixed", project(fixedAt(3)), place("P1", 3, "B1", 4)))
                    .isEmpty();
            assertThat(broken("fixed", project(fixedAt(3.0004)), place("P1", 3, "B1", 4)))
                    .isEmpty();
            assertThat(broken("fixed", project(fixedAt(3.001)), place("P1", 3, "B1", 4)))
                    .singleElement()
                    .asString()
                    .contains("fixed to come on at 3.001 s", "has 3 s");
            assertThat(broken("fixed", project(fixedAt(2.999)), place("P1", 3, "B1", 4)))
                    .hasSize(1);
        }

        private LoadBuilder fixedAt(double seconds) {
            return aLoad("L1")
                    .with(load ->
                            load.fixed(FixedPlace.builder().onSeconds(seconds).build()));
        }

        @Test
        void leavesWhatIsNotFixedFree() {
            assertThat(broken("fixed", project(aLoad("L1").fixedSlot(3)), place("P2", 3, "B2", 7)))
                    .isEmpty();
        }
    }

    @Nested
    class Apart {
        private ProjectBuilder project() {
            return panels(aPanel("P1"), aPanel("P2")).loads(load("L1").apartFrom("L2"), load("L2"));
        }

        @Test
        void isKeptByDifferentPanels() {
            assertThat(broken("apart", project(), pair("P1", 1, "P2", 1))).isEmpty();
        }

        @Test
        void refusesOnePanelHoweverFarApartTheSlots() {
            assertThat(broken("apart", project(), pair("P1", 1, "P1", 42)))
                    .containsExactly("loads 'L1' and 'L2' must be apart, but both sit in panel 'P1'."
                            + " Maybe move one of them to another panel.");
        }

        @Test
        void waitsForLoadsWithoutAPlace() {
            Verdict verdict = Judging.verdict(project(), at("P1", 1));

            assertThat(verdict.violations()).extracting(BrokenRule::rule).containsExactly("assigned");
        }
    }

    @Nested
    class SamePhase {
        private ProjectBuilder project(int poles) {
            return panels(aPanel("P1"), aPanel("P2"))
                    .loads(load("L1").poles(poles).samePhaseAs("L2"), load("L2").poles(poles));
        }

        @Test
        void isKeptByOnePhaseInDifferentPanels() {
            // rows 1 and 4 lie on A
            assertThat(broken("same-phase", project(1), pair("P1", 1, "P2", 7))).isEmpty();
        }

        @Test
        void isKeptByTheSameTwoPhasesInAnyOrder() {
            // with two poles: slots 3, 5 on B, C, and 9, 11 on B, C
            assertThat(broken("same-phase", project(2), pair("P1", 3, "P1", 9))).isEmpty();
        }

        @Test
        void refusesTheNextRow() {
            assertThat(broken("same-phase", project(1), pair("P1", 1, "P2", 9)))
                    .containsExactly("load 'L1' touches A, load 'L2' touches B, but both must touch the same phases."
                            + " Maybe move one of them to a row of the other's phase.");
        }

        @Test
        void waitsForLoadsWithoutAPlace() {
            Verdict verdict = Judging.verdict(project(1), at("P1", 1));

            assertThat(verdict.violations()).extracting(BrokenRule::rule).containsExactly("assigned");
        }
    }
}
