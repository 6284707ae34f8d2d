package evenrise.model.check;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.ARandomProject;
import evenrise.model.ProjectBuilder;
import evenrise.model.project.Feeder;
import evenrise.model.project.FeederTap;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class ProjectChecksTest {
    /** Panels P1 and P2, boards B1 (reaches P1) and B2 (reaches P2), group stage. */
    private static ProjectBuilder parts() {
        return aProject()
                .panels(aPanel("P1").slots(12), aPanel("P2").slots(12))
                .boards(aBoard("B1"), aBoard("B2").in("P2"))
                .groups(aGroup("stage"));
    }

    private static List<Objection> errors(ProjectBuilder project) {
        return ProjectChecks.errors(project.build());
    }

    private static Objection only(ProjectBuilder project) {
        List<Objection> errors = errors(project);
        assertThat(errors).hasSize(1);
        assertThat(errors.get(0).severity()).isEqualTo(Severity.ERROR);
        return errors.get(0);
    }

    @Test
    void findNothingInAnyRandomProject() {
        assertThat(LongStream.range(0, 300).mapToObj(ARandomProject::of))
                .allSatisfy(project -> assertThat(ProjectChecks.errors(project)).isEmpty());
    }

    @Nested
    class Ids {
        @Test
        void areUniqueInEachList() {
            assertThat(errors(parts().panels(aPanel("P1"))
                            .boards(aBoard("B1"))
                            .groups(aGroup("stage"))
                            .loads(aLoad("x"), aLoad("x"))))
                    .extracting(Objection::pointer)
                    .containsExactly("/panels/2/id", "/boards/2/id", "/shutdown_groups/1/id", "/loads/1/id");
        }

        @Test
        void mayBeSharedByPartsOfDifferentKinds() {
            assertThat(errors(parts().loads(aLoad("P1"), aLoad("B1")))).isEmpty();
        }
    }

    /** Where a tap begins stands no device. */
    @Test
    void ofATapStateNoDeviceOfItsOwn() {
        Feeder tap =
                Feeder.builder().tap(Optional.of(FeederTap.builder().build())).build();
        Project one = parts().build();

        assertThat(ProjectChecks.errors(one.withPanels(List.of(
                        one.panels().get(0).withFeeder(Optional.of(tap.withBreakerAmps(OptionalDouble.of(100)))),
                        one.panels().get(1).withFeeder(Optional.of(tap))))))
                .singleElement()
                .satisfies(it -> {
                    assertThat(it.pointer()).isEqualTo("/panels/0/feeder/tap");
                    assertThat(it.expected()).contains("no breaker_a");
                });
    }

    @Nested
    class Guessed {
        private static List<Objection> errorsWhereGuessed(String... fields) {
            Project project = parts().loads(aLoad("x")).build();
            Load load = project.loads().get(0).withGuessed(List.of(fields));
            return ProjectChecks.errors(project.withLoads(List.of(load)));
        }

        @Test
        void isAFieldOfALoad() {
            assertThat(errorsWhereGuessed("power_factor", "inrush_peak_a", "curve"))
                    .isEmpty();

            assertThat(errorsWhereGuessed("idle_a", "inrush_peek_a"))
                    .singleElement()
                    .satisfies(finding -> {
                        assertThat(finding.pointer()).isEqualTo("/loads/0/guessed/1");
                        assertThat(finding.cure()).isEqualTo("Maybe 'inrush_peak_a'.");
                    });
        }
    }

    @Nested
    class Referring {
        @Test
        void namesTheNearestKnownId() {
            Objection finding = only(parts().loads(aLoad("amp-left"), aLoad("b").comesAfter("amp-letf")));

            assertThat(finding.pointer()).isEqualTo("/loads/1/comes_after/0");
            assertThat(finding.cure()).isEqualTo("Maybe 'amp-left'.");
        }

        @Test
        void isCheckedEverywhere() {
            assertThat(errors(parts().boards(aBoard("B3")
                                    .type("ten")
                                    .in("P8")
                                    .reaches("P1", "P9")
                                    .after("B9"))
                            .loads(aLoad("x")
                                    .group("g")
                                    .comesAfter("a")
                                    .panels("P7")
                                    .apartFrom("b")
                                    .samePhaseAs("c")
                                    .fixedPanel("P7")
                                    .fixedBoard("B7"))))
                    .extracting(Objection::pointer)
                    .containsExactly(
                            "/boards/2/type",
                            "/boards/2/panel",
                            "/boards/2/reaches/1",
                            "/boards/2/after",
                            "/loads/0/shutdown_group",
                            "/loads/0/comes_after/0",
                            "/loads/0/panels/0",
                            "/loads/0/apart_from/0",
                            "/loads/0/same_phase_as/0",
                            "/loads/0/fixed/panel",
                            "/loads/0/fixed/board");
        }
    }

    @Nested
    class GoingInACircle {
        @Test
        void namesTheLoadsOfIt() {
            Objection finding = only(parts().loads(
                            aLoad("a").comesAfter("b"),
                            aLoad("b").comesAfter("c"),
                            aLoad("c").comesAfter("a"),
                            aLoad("d").comesAfter("a")));

            assertThat(finding.pointer()).isEqualTo("/loads/0/comes_after/0");
            assertThat(finding.value()).isEqualTo("part of a circle: 'a' after 'b' after 'c' after 'a'");
        }

        @Test
        void isSaidOfALoadAfterItself() {
            assertThat(only(parts().loads(aLoad("a").comesAfter("a"))).value()).isEqualTo("'a', itself");
        }

        @Test
        void ofNeedsAndOrderAreNamed() {
            // the amplifier needs the room's processing, which is to come after it
            Objection finding = only(parts().groups(aGroup("room").holds())
                    .loads(
                            aLoad("amp").amplifier().needsGroups("room"),
                            aLoad("dsp").processing().group("room").comesAfter("amp")));

            assertThat(finding.pointer()).isEqualTo("/loads/0/needs_groups/0");
            assertThat(finding.value()).isEqualTo("part of a circle: 'amp' after 'dsp' after 'amp'");
        }

        @Test
        void ofNeedsNameGroupsWithProcessing() {
            assertThat(only(parts().groups(aGroup("room").holds())
                                    .loads(
                                            aLoad("amp").amplifier().needsGroups("room"),
                                            aLoad("lamp").auxiliary().group("room")))
                            .value())
                    .isEqualTo("'room', in which nothing is processing");
            assertThat(only(parts().loads(aLoad("amp").amplifier().needsGroups("rom")))
                            .pointer())
                    .isEqualTo("/loads/0/needs_groups/0");
        }

        @Test
        void ofNeedsAreNotForProcessing() {
            assertThat(only(parts().groups(aGroup("room").holds())
                                    .loads(
                                            aLoad("dsp").processing().group("room"),
                                            aLoad("core").processing().needsGroups("room")))
                            .pointer())
                    .isEqualTo("/loads/1/needs_groups");
        }

        @Test
        void isSaidOfEachCircleAlone() {
            assertThat(errors(parts().loads(
                                    aLoad("a").comesAfter("b"),
                                    aLoad("b").comesAfter("a"),
                                    aLoad("c").comesAfter("a", "d"),
                                    aLoad("d").comesAfter("c"))))
                    .extracting(Objection::pointer)
                    .containsExactly("/loads/0/comes_after/0", "/loads/2/comes_after/1");
        }

        @Test
        void isSaidOfBoards() {
            assertThat(only(aProject()
                                    .boards(
                                            aBoard("B1").after("B2"),
                                            aBoard("B2").after("B1")))
                            .pointer())
                    .isEqualTo("/boards/0/after");
        }

        @Test
        void isNotSaidOfAMesh() {
            assertThat(errors(parts().loads(
                                    aLoad("a"),
                                    aLoad("b").comesAfter("a"),
                                    aLoad("c").comesAfter("a", "b"),
                                    aLoad("d").comesAfter("c", "a"))))
                    .isEmpty();
        }
    }

    @Nested
    class Relating {
        @Test
        void refusesTheSamePhaseForDifferentPoles() {
            assertThat(only(parts().loads(aLoad("a").twoPole(), aLoad("b").samePhaseAs("a")))
                            .value())
                    .isEqualTo("'a', which has 2 poles");
        }

        @Test
        void refusesALoadApartFromItself() {
            assertThat(only(parts().loads(aLoad("a").apartFrom("a"))).pointer()).isEqualTo("/loads/0/apart_from/0");
        }

        @Test
        void refusesAGroupAnOrderABoardAndAnOutputForAnUnswitchedLoad() {
            assertThat(errors(parts().loads(
                                    aLoad("a"),
                                    aLoad("b")
                                            .unswitched()
                                            .group("stage")
                                            .comesAfter("a")
                                            .fixedBoard("B1")
                                            .fixedOutput(1))))
                    .extracting(Objection::pointer)
                    .containsExactly(
                            "/loads/1/shutdown_group",
                            "/loads/1/comes_after",
                            "/loads/1/fixed/board",
                            "/loads/1/fixed/output");
        }

        @Test
        void refusesToComeAfterAnUnswitchedLoad() {
            assertThat(only(parts().loads(aLoad("a").unswitched(), aLoad("b").comesAfter("a")))
                            .pointer())
                    .isEqualTo("/loads/1/comes_after/0");
        }
    }

    @Nested
    class Numbering {
        @Test
        void refusesSlotsBeyondThePanel() {
            assertThat(errors(aProject()
                            .panels(aPanel().slots(12).reservedSlots(12, 13).switchedSlots(1, 14))))
                    .extracting(Objection::pointer)
                    .containsExactly("/panels/0/reserved_slots/1", "/panels/0/switched_slots/1");
        }

        @Test
        void refusesPhasesAndPolesThatTheSystemLacks() {
            assertThat(errors(aProject()
                            .supply(aSupply().splitPhase())
                            .panels(aPanel().phaseRotation(Phase.B, Phase.C))
                            .loads(aLoad().threePole(), aLoad("two").twoPole())))
                    .extracting(Objection::pointer)
                    .contains("/panels/0/phase_rotation/1", "/loads/0/poles")
                    .doesNotContain("/panels/0/phase_rotation/0", "/loads/1/poles");
        }
    }

    @Nested
    class FixingPlaces {
        @Test
        void refusesAPanelThatTheLoadMayNotSitIn() {
            assertThat(only(parts().loads(aLoad().panels("P1").fixedPanel("P2")))
                            .pointer())
                    .isEqualTo("/loads/0/fixed/panel");
        }

        @Test
        void refusesABoardThatDoesNotReachThePanel() {
            assertThat(only(parts().loads(aLoad().fixedPanel("P1").fixedBoard("B2")))
                            .pointer())
                    .isEqualTo("/loads/0/fixed/board");
        }

        @Test
        void refusesSlotsAndOutputsBeyondWhatIsThere() {
            assertThat(errors(parts().loads(
                                    aLoad("a").fixedSlot(13),
                                    aLoad("b").fixedPanel("P1").fixedSlot(13),
                                    aLoad("c").fixedOutput(9),
                                    aLoad("d").fixedBoard("B1").fixedOutput(9),
                                    aLoad("e").fixedSlot(12),
                                    aLoad("f").fixedOutput(8))))
                    .extracting(Objection::pointer)
                    .containsExactly(
                            "/loads/0/fixed/slot",
                            "/loads/1/fixed/slot",
                            "/loads/2/fixed/output",
                            "/loads/3/fixed/output");
        }

        @Test
        void refusesOverlappingBreakers() {
            Objection finding = only(parts().loads(
                            aLoad("a").fixedPanel("P1").fixedSlot(1).threePole(), // takes 1, 3, 5
                            aLoad("b").fixedPanel("P1").fixedSlot(4),
                            aLoad("c").fixedPanel("P2").fixedSlot(5),
                            aLoad("d").panels("P1").fixedSlot(5)));

            assertThat(finding.pointer()).isEqualTo("/loads/3/fixed/slot");
            assertThat(finding.value()).isEqualTo("slot 5 of panel 'P1', where load 'a' is fixed");
        }

        @Test
        void refusesOneOutputForTwoLoads() {
            Objection finding = only(parts().loads(
                            aLoad("a").fixedBoard("B1").fixedOutput(3),
                            aLoad("b").fixedBoard("B2").fixedOutput(3),
                            aLoad("c").fixedBoard("B1").fixedOutput(3)));

            assertThat(finding.pointer()).isEqualTo("/loads/2/fixed/output");
        }
    }
}
