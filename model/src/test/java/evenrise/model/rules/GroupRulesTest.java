package evenrise.model.rules;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static evenrise.model.rules.Judging.broken;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.PlanBuilder;
import evenrise.model.ProjectBuilder;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Rules on shutdown groups. Boards B1 and B2 have three outputs each and reach both panels. */
class GroupRulesTest {
    private static ProjectBuilder project(LoadBuilder... loads) {
        return aProject()
                .panels(aPanel("P1"), aPanel("P2"))
                .boardTypes(aBoardType().outputs(3))
                .boards(aBoard("B1").reaches("P1", "P2"), aBoard("B2").reaches("P1", "P2"))
                .groups(
                        aGroup("drop1"),
                        aGroup("drop2"),
                        aGroup("hold").holds(),
                        aGroup("one").samePanel())
                .loads(loads);
    }

    private static LoadBuilder load(String id, String group) {
        return aLoad(id).group(group);
    }

    /** Each place is load, board and output, such as {@code "L1 B1 2"}; loads take slots 1, 3, 5, … of P1. */
    private static PlanBuilder plan(String... places) {
        PlanBuilder plan = aPlan().board("B1", 0, 1).board("B2", 0, 1);
        for (int i = 0; i < places.length; i++) {
            String[] part = places[i].split(" ");
            plan.assignments(anAssignment(part[0]).at("P1", 2 * i + 1).on(part[1], Integer.parseInt(part[2])));
        }
        return plan;
    }

    @Nested
    class Emergency {
        @Test
        void isKeptByABoardOfGroupsThatDrop() {
            ProjectBuilder project = project(load("L1", "drop1"), load("L2", "drop2"));

            assertThat(broken("emergency", project, plan("L1 B1 1", "L2 B1 2"))).isEmpty();
        }

        @Test
        void isKeptByLoadsWithoutAGroupBesideThoseThatHold() {
            ProjectBuilder project = project(load("L1", "hold"), aLoad("L2"));

            assertThat(broken("emergency", project, plan("L1 B1 1", "L2 B1 2"))).isEmpty();
        }

        @Test
        void isKeptByDropAndHoldOnTwoBoards() {
            ProjectBuilder project = project(load("L1", "drop1"), load("L2", "hold"));

            assertThat(broken("emergency", project, plan("L1 B1 1", "L2 B2 1"))).isEmpty();
        }

        @Test
        void refusesDropAndHoldOnOneBoard() {
            ProjectBuilder project = project(load("L1", "drop1"), load("L2", "hold"));

            assertThat(broken("emergency", project, plan("L1 B1 1", "L2 B1 3")))
                    .containsExactly("board 'B1' mixes loads that drop on an emergency ('L1') with loads that hold"
                            + " ('L2'); one kind a board is allowed. Maybe move the fewer to another board.");
        }

        @Test
        void takesALoadWithoutAGroupForOneThatHolds() {
            ProjectBuilder project = project(load("L1", "drop1"), aLoad("L2"));

            assertThat(broken("emergency", project, plan("L1 B1 1", "L2 B1 2"))).hasSize(1);
        }
    }

    @Nested
    class GroupWhole {
        private ProjectBuilder three() {
            return project(load("L1", "drop1"), load("L2", "drop1"), load("L3", "drop1"));
        }

        private ProjectBuilder fourAndOne() {
            return project(
                    load("L1", "drop1"),
                    load("L2", "drop1"),
                    load("L3", "drop1"),
                    load("L4", "drop1"),
                    load("L5", "drop2"));
        }

        @Test
        void isKeptByAGroupThatJustFitsOneBoard() {
            assertThat(broken("group-whole", three(), plan("L1 B1 1", "L2 B1 2", "L3 B1 3")))
                    .isEmpty();
        }

        @Test
        void refusesToSplitAGroupThatFits() {
            assertThat(broken("group-whole", three(), plan("L1 B1 1", "L2 B1 2", "L3 B2 1")))
                    .containsExactly(
                            "shutdown group 'drop1' (3 loads) is split over boards 'B1', 'B2'; a group of up to"
                                    + " 3 loads, the outputs of the largest board, must sit on one. Maybe move all of it to a"
                                    + " board with enough outputs.");
        }

        @Test
        void letsALargerGroupUseSeveralBoardsOfItsOwn() {
            ProjectBuilder four =
                    project(load("L1", "drop1"), load("L2", "drop1"), load("L3", "drop1"), load("L4", "drop1"));

            assertThat(broken("group-whole", four, plan("L1 B1 1", "L2 B1 2", "L3 B2 1", "L4 B2 2")))
                    .isEmpty();
        }

        @Test
        void refusesALargerGroupThatSharesABoard() {
            assertThat(broken("group-whole", fourAndOne(), plan("L1 B1 1", "L2 B1 2", "L3 B2 1", "L4 B2 2", "L5 B2 3")))
                    .containsExactly("shutdown group 'drop1' is larger than any board, but shares board 'B2' with 'L5';"
                            + " its boards may hold nothing else. Maybe move those to another board.");
        }
    }

    @Nested
    class GroupRun {
        private ProjectBuilder twoAndOne() {
            return project(load("L1", "drop1"), load("L2", "drop1"), load("L3", "drop2"));
        }

        @Test
        void isKeptByOneRunAfterAnother() {
            assertThat(broken("group-run", twoAndOne(), plan("L1 B1 1", "L2 B1 2", "L3 B1 3")))
                    .isEmpty();
        }

        @Test
        void isKeptAcrossAnUnusedOutput() {
            ProjectBuilder project = project(load("L1", "drop1"), load("L2", "drop1"));

            assertThat(broken("group-run", project, plan("L1 B1 1", "L2 B1 3"))).isEmpty();
        }

        @Test
        void refusesAnotherGroupInBetween() {
            assertThat(broken("group-run", twoAndOne(), plan("L1 B1 1", "L2 B1 3", "L3 B1 2")))
                    .containsExactly(
                            "shutdown group 'drop1' is interrupted on board 'B1': it has runs from outputs 1, 3,"
                                    + " one run is allowed. Maybe exchange outputs so that its loads follow each other.");
        }

        @Test
        void refusesALoadWithoutAGroupInBetween() {
            ProjectBuilder project = project(load("L1", "hold"), load("L2", "hold"), aLoad("L3"));

            assertThat(broken("group-run", project, plan("L1 B1 1", "L2 B1 3", "L3 B1 2")))
                    .hasSize(1);
        }

        @Test
        void letsLoadsWithoutAGroupBeInterrupted() {
            ProjectBuilder project = project(aLoad("L1"), aLoad("L2"), load("L3", "hold"));

            assertThat(broken("group-run", project, plan("L1 B1 1", "L2 B1 3", "L3 B1 2")))
                    .isEmpty();
        }
    }

    @Nested
    class GroupPanel {
        private PlanBuilder panels(String first, String second) {
            return aPlan().board("B1", 0, 1)
                    .board("B2", 0, 1)
                    .assignments(
                            anAssignment("L1").at(first, 1).on("B1", 1),
                            anAssignment("L2").at(second, 3).on("B1", 2));
        }

        @Test
        void isKeptByOnePanel() {
            ProjectBuilder project = project(load("L1", "one"), load("L2", "one"));

            assertThat(broken("group-panel", project, panels("P2", "P2"))).isEmpty();
        }

        @Test
        void refusesTwoPanels() {
            ProjectBuilder project = project(load("L1", "one"), load("L2", "one"));

            assertThat(broken("group-panel", project, panels("P1", "P2")))
                    .containsExactly("shutdown group 'one' must sit in one panel, but is in 'P1', 'P2'."
                            + " Maybe move the fewer loads to the panel of the others.");
        }

        @Test
        void leavesOtherGroupsFree() {
            ProjectBuilder project = project(load("L1", "drop1"), load("L2", "drop1"));

            assertThat(broken("group-panel", project, panels("P1", "P2"))).isEmpty();
        }
    }
}
