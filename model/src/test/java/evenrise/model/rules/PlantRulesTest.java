package evenrise.model.rules;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
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
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Subject;
import evenrise.model.plan.SubjectKind;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.NodeSource;
import evenrise.model.project.OffTiming;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.SpareBuilder;
import evenrise.model.project.SwitchedBy;
import evenrise.model.project.SwitchedSystem;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Rules of plants with several systems, voltages, contactors, off delays and room to grow. */
class PlantRulesTest {
    private static LoadBuilder of(String id, String system) {
        return aLoad(id).with(load -> load.system(system));
    }

    private static ProjectBuilder twoSystems() {
        return aProject()
                .boards(aBoard("B1"), aBoard("B2").after("B1"))
                .with(project -> project.systems(List.of(
                        SwitchedSystem.builder().id("core").build(),
                        SwitchedSystem.builder().id("hall").build())));
    }

    private static PlanBuilder on(String first, String second) {
        return aPlan().board("B1", 0, 1)
                .board("B2", 0, 1)
                .assignments(
                        anAssignment("L1").at("P1", 1).on(first, 1),
                        anAssignment("L2").at("P1", 3).on(second, 2));
    }

    @Nested
    class System {
        @Test
        void isKeptByABoardOfOneSystem() {
            ProjectBuilder project = twoSystems().loads(of("L1", "hall"), of("L2", "hall"));

            assertThat(broken("system", project, on("B1", "B1"))).isEmpty();
            assertThat(broken("system", project, on("B1", "B2"))).isEmpty();
        }

        @Test
        void refusesABoardOfTwo() {
            ProjectBuilder project = twoSystems().loads(of("L1", "core"), of("L2", "hall"));

            assertThat(broken("system", project, on("B1", "B1")))
                    .containsExactly("board 'B1' switches loads of systems 'core', 'hall'; one is allowed."
                            + " Maybe move the fewer to another board.");
        }

        @Test
        void refusesABoardThatFollowsOneOfAnother() {
            ProjectBuilder project = twoSystems().loads(of("L1", "core"), of("L2", "hall"));

            assertThat(broken("system", project, on("B1", "B2")))
                    .containsExactly(
                            "board 'B2' switches loads of 'hall', but follows board 'B1', which switches loads of"
                                    + " 'core'; both must serve one system. Maybe let it follow another board, or start"
                                    + " with the start signal.");
        }

        @Test
        void refusesLoadsOfAnotherThanTheBoardStates() {
            ProjectBuilder project = twoSystems()
                    .boards(aBoard("B3").with(board -> board.system("core")))
                    .loads(of("L1", "hall"), of("L2", "hall"));

            assertThat(broken("system", project, on("B3", "B3").board("B3", 0, 1)))
                    .containsExactly("board 'B3' is of system 'core', but switches loads of 'hall'."
                            + " Maybe move them to a board of theirs.");
        }
    }

    @Nested
    class With {
        private final ProjectBuilder project = aProject()
                .panels(aPanel(), aPanel("P2"))
                .boards(aBoard("B1"))
                .loads(
                        aLoad("L1").with(load -> load.switchedBy(SwitchedBy.CONTACTOR)),
                        aLoad("L2").with(load -> load.comesWith("L1")));

        private PlanBuilder second(String panel) {
            return aPlan().board("B1", 0, 1)
                    .assignments(
                            anAssignment("L1").at("P1", 1).on("B1", 1),
                            anAssignment("L2").at(panel, 3));
        }

        @Test
        void isKeptInThePanelOfTheContactor() {
            assertThat(broken("with", project, second("P1"))).isEmpty();
        }

        @Test
        void refusesAnotherPanel() {
            assertThat(broken("with", project, second("P2")))
                    .containsExactly(
                            "load 'L2' sits in panel 'P2', but the contactor that it is behind, of load 'L1', in"
                                    + " 'P1'. Maybe move it there, or let it come with another load.");
        }

        @Test
        void waitsForTheOtherLoad() {
            Plan alone = aPlan().board("B1", 0, 1)
                    .assignments(anAssignment("L2").at("P2", 3))
                    .build();

            assertThat(Referee.judge(project.build(), alone).violations())
                    .extracting(BrokenRule::rule)
                    .doesNotContain("with");
        }
    }

    @Nested
    class Voltage {
        private List<String> at(double volts) {
            ProjectBuilder project = aProject()
                    .panels(aPanel(), aPanel("P2").with(panel -> panel.fedFrom("GEN")))
                    .boards(aBoard("B1").with(board -> board.reaches(List.of("P2"))))
                    .loads(aLoad("L1").with(load -> load.lineToNeutralVolts(volts)))
                    .with(made -> made.nodes(List.of(DistributionNode.builder()
                            .id("GEN")
                            .ratedAmps(100)
                            .source(Optional.of(NodeSource.builder()
                                    .system(PhaseSystem.THREE_PHASE)
                                    .lineToNeutralVolts(100)
                                    .frequencyHertz(60)
                                    .build()))
                            .build())));
            return broken(
                    "voltage",
                    project,
                    aPlan().board("B1", 0, 1)
                            .assignments(anAssignment("L1").at("P2", 1).on("B1", 1)));
        }

        /** 100 is 5 above 95, of which 5 % are 4.75; 6 above 94; 20 below 120, of which 5 % are 6. */
        @Test
        void refusesMoreThanFivePercentOfWhatTheLoadStates() {
            assertThat(at(95)).hasSize(1);
            assertThat(at(94)).hasSize(1);
            assertThat(at(120))
                    .containsExactly("load 'L1' is for 120 V to neutral, but panel 'P2' has 100 V; 5 % are allowed."
                            + " Maybe move it to a panel below another transformer.");
        }

        /** 100 is 5 below 105, of which 5 % are 5.25; 4 above 96, of which 5 % are 4.8. */
        @Test
        void isKeptWithin() {
            assertThat(at(105)).isEmpty();
            assertThat(at(100)).isEmpty();
            assertThat(at(96)).isEmpty();
        }

        /** 100/80 = 1.25: 5 % of 80 are 4. */
        @Test
        void refusesTooHighAVoltage() {
            assertThat(at(80)).hasSize(1);
        }
    }

    @Nested
    class OffDelay {
        private List<String> on(OffTiming off, double late) {
            ProjectBuilder project = aProject()
                    .boardTypes(aBoardType().with(type -> type.off(off)))
                    .boards(aBoard("B1"))
                    .loads(aLoad("L1").with(load -> load.offAfterSeconds(late)));
            return broken(
                    "off-delay",
                    project,
                    aPlan().board("B1", 0, 1)
                            .assignments(anAssignment("L1").at("P1", 1).on("B1", 1)));
        }

        @Test
        void isKeptOnABoardWithOffTimesOfItsOwn() {
            assertThat(on(OffTiming.EACH, 90)).isEmpty();
        }

        @Test
        void refusesABoardThatMirrors() {
            assertThat(on(OffTiming.MIRROR, 90))
                    .containsExactly("load 'L1' is to go off 90 s late, but board 'B1' only mirrors its switching on."
                            + " Maybe move it to a board whose off is each.");
        }

        @Test
        void asksNothingOfALoadThatGoesOffWithTheMirror() {
            assertThat(on(OffTiming.MIRROR, 0)).isEmpty();
        }
    }

    /** A panel of 6 slots, 100 A of which 80 are allowed: loads of 68 A in slots 1 (A) and 3 (B); 2, 4, 5 and 6 are free. */
    @Nested
    class Spare {
        private List<String> asked(SpareBuilder spare) {
            ProjectBuilder project = aProject()
                    .panels(aPanel().slots(6).ratedAmps(100).switchedSlots(1, 3, 5))
                    .boardTypes(aBoardType().outputs(3).with(type -> type.spareOutputs(1)))
                    .boards(aBoard("B1"))
                    .loads(aLoad("L1").runningAmps(68), aLoad("L2").runningAmps(68))
                    .with(made -> made.spare(Optional.of(spare.build())));
            return broken(
                    "spare",
                    project,
                    aPlan().board("B1", 0, 1)
                            .assignments(
                                    anAssignment("L1").at("P1", 1).on("B1", 1),
                                    anAssignment("L2").at("P1", 3).on("B1", 2)));
        }

        private SpareBuilder spare() {
            return evenrise.model.project.Spare.builder();
        }

        /** Slots 2, 4, 6 take a breaker of three poles; 68 of 80 A leave 15 %; two of three outputs leave one. */
        @Test
        void isKeptAtTheLimit() {
            assertThat(asked(spare().slots(4).switchedSlots(1).poles(3).fits(1).runningPercent(15)))
                    .isEmpty();
        }

        @Test
        void refusesTooFewSlots() {
            assertThat(asked(spare().slots(5)))
                    .containsExactly(
                            "panel 'P1' leaves free slots: 4, wanted are 5." + " Maybe move a load to another panel.");
        }

        @Test
        void refusesTooFewSlotsForSwitchedBreakers() {
            assertThat(asked(spare().switchedSlots(2)))
                    .hasSize(1)
                    .first()
                    .asString()
                    .contains("switched breakers: 1,");
        }

        @Test
        void refusesTooLittleRoomForLongBreakers() {
            assertThat(asked(spare().poles(3).fits(2)))
                    .hasSize(1)
                    .first()
                    .asString()
                    .contains("of 3 poles: 1,");
        }

        /** Three outputs, of which one is to stay free: two in use leave one, three leave none; an idle board is not asked. */
        @Test
        void refusesABoardWithTooFewOutputsLeft() {
            ProjectBuilder project = aProject()
                    .boardTypes(aBoardType().outputs(3).with(type -> type.spareOutputs(1)))
                    .boards(aBoard("B1"), aBoard("B2"))
                    .loads(aLoad("L1"), aLoad("L2"), aLoad("L3"));
            PlanBuilder two = aPlan().board("B1", 0, 1)
                    .board("B2", 0, 1)
                    .assignments(
                            anAssignment("L1").at("P1", 1).on("B1", 1),
                            anAssignment("L2").at("P1", 3).on("B1", 2),
                            anAssignment("L3").at("P1", 5).on("B2", 3));
            PlanBuilder three = aPlan().board("B1", 0, 1)
                    .board("B2", 0, 1)
                    .assignments(
                            anAssignment("L1").at("P1", 1).on("B1", 1),
                            anAssignment("L2").at("P1", 3).on("B1", 2),
                            anAssignment("L3").at("P1", 5).on("B1", 3));

            assertThat(broken("spare", project, two)).isEmpty();
            assertThat(broken("spare", project, three))
                    .hasSize(1)
                    .first()
                    .asString()
                    .contains("'B1'", "0", "1");
        }

        @Test
        void refusesCurrentsThatLeaveLess() {
            assertThat(asked(spare().runningPercent(15.1))).hasSize(2).allMatch(each -> each.contains("runs at 68 A"));
        }
    }

    /** Core ends at 3 s by B1, output 4, hall at 2 s by B2, output 3; each is told by its own last load. */
    @Nested
    class Durations {
        private final PlanBuilder plan = aPlan().board("B1", 0, 1)
                .board("B2", 0, 1)
                .assignments(
                        anAssignment("C").at("P1", 1).on("B1", 4),
                        anAssignment("D").at("P1", 5).on("B1", 2),
                        anAssignment("H").at("P1", 3).on("B2", 3));

        private List<BrokenRule> tooLong(double most) {
            return Judging.verdict(
                            aProject()
                                    .with(project -> project.systems(List.of(
                                            SwitchedSystem.builder().id("core").build(),
                                            SwitchedSystem.builder().id("hall").build())))
                                    .boards(aBoard("B1"), aBoard("B2"))
                                    .loads(of("C", "core"), of("D", "core"), of("H", "hall"))
                                    .maxDurationSeconds(most),
                            plan)
                    .violations();
        }

        @Test
        void areThoseOfEachSystem() {
            assertThat(tooLong(3)).isEmpty();
            assertThat(tooLong(2.5))
                    .extracting(BrokenRule::message)
                    .singleElement()
                    .asString()
                    .startsWith("the sequence of system 'core' takes 3 s, allowed are 2.5 s; load 'C' on board 'B1'");
            assertThat(tooLong(1.5))
                    .extracting(BrokenRule::message)
                    .satisfiesExactlyInAnyOrder(
                            core -> assertThat(core).contains("of system 'core' takes 3 s", "load 'C' on board 'B1'"),
                            hall -> assertThat(hall).contains("of system 'hall' takes 2 s", "load 'H' on board 'B2'"));
        }

        @Test
        void nameTheirSystemAmongWhomTheyAreAbout() {
            assertThat(tooLong(2.5).get(0).subjects())
                    .contains(
                            new Subject(SubjectKind.SYSTEM, "core"),
                            new Subject(SubjectKind.LOAD, "C"),
                            new Subject(SubjectKind.BOARD, "B1"));
        }
    }
}
