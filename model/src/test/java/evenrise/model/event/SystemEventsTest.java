package evenrise.model.event;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.ProjectBuilder;
import evenrise.model.plan.Plan;
import evenrise.model.project.Behaviour;
import evenrise.model.project.NeededGroup;
import evenrise.model.project.OffTiming;
import evenrise.model.project.Overlap;
import evenrise.model.project.PlanEvent;
import evenrise.model.project.Project;
import evenrise.model.project.Resume;
import evenrise.model.project.SwitchedBy;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/**
 * A core (desk, processing, at 0 s, settled after 8 s; screen at 1 s) and a hall that needs it (rack, processing, at 0 s; amp
 * at 1 s, in a group that drops), on phase A of one panel, each with a board and a command of its own. In ampere, running,
 * idle, peak: each load 10, 1, 50, the inrush gone by the next instant.
 */
class SystemEventsTest {
    private static final Offset<Double> NEARLY = within(1e-6);
    private static final double ROOT_2 = Math.sqrt(2);

    private Overlap overlap = Overlap.ONE_AT_A_TIME;
    private boolean hallNeedsCore = true;
    private Behaviour behaviour = Behaviour.DEFAULT;

    private Layout halls() {
        ProjectBuilder project = aProject()
                .behaviour(behaviour)
                .boardTypes(aBoardType().startDelaySeconds(0).stepSeconds(1))
                .boards(aBoard("C"), aBoard("H"))
                .groups(aGroup("stage").drops(), aGroup("video").drops())
                .loads(
                        load("desk", "core").processing().settleSeconds(8),
                        load("screen", "core").auxiliary().group("video"),
                        load("rack", "hall").processing(),
                        load("amp", "hall").amplifier().group("stage"))
                .with(it -> it.overlap(overlap)
                        .systems(List.of(
                                SwitchedSystem.builder()
                                        .id("hall")
                                        .needs(hallNeedsCore ? List.of("core") : List.of())
                                        .build(),
                                SwitchedSystem.builder().id("core").build())));
        Project built = project.build();
        Plan plan = aPlan().board("C", 0, 1)
                .board("H", 0, 1)
                .assignments(
                        anAssignment("desk").at("P1", 1).on("C", 1),
                        anAssignment("screen").at("P1", 2).on("C", 2),
                        anAssignment("rack").at("P1", 7).on("H", 1),
                        anAssignment("amp").at("P1", 8).on("H", 2))
                .build();
        return Layout.of(built, PlanFinisher.timed(built, plan));
    }

    private static evenrise.model.LoadBuilder load(String id, String system) {
        return aLoad(id)
                .runningAmps(10)
                .idleAmps(1)
                .inrushPeakAmps(50)
                .inrushHalfMillis(2)
                .with(it -> it.system(system));
    }

    private static ScriptEvent at(double seconds, Happening event) {
        return ScriptEvent.of(OptionalDouble.of(seconds), event);
    }

    private static ScriptEvent on(double seconds, String system) {
        return at(seconds, Happening.SYSTEM_ON).withSystem(system);
    }

    private static ScriptEvent off(double seconds, String system) {
        return at(seconds, Happening.SYSTEM_OFF).withSystem(system);
    }

    private static ScriptEvent mains(double seconds, double percent) {
        return at(seconds, Happening.MAINS).voltage(percent, List.of());
    }

    private Trace play(ScriptEvent... events) {
        return play(halls(), events);
    }

    private static Trace play(Layout layout, ScriptEvent... events) {
        return Rehearsal.of(ConnectedLoads.of(layout), new EventScript("test", List.of(events)));
    }

    private static List<String> moves(Trace trace) {
        List<String> moves = new ArrayList<>();
        for (TraceEntry step : trace.steps()) {
            if (step.kind() == EntryKind.CLOSES || step.kind() == EntryKind.OPENS) {
                moves.add(step.atSeconds()
                        + (step.kind() == EntryKind.CLOSES ? " +" : " -")
                        + step.load().orElseThrow());
            }
        }
        return moves;
    }

    private static List<String> refused(Trace trace) {
        return trace.steps().stream()
                .filter(step -> step.kind() == EntryKind.REFUSED)
                .map(TraceEntry::text)
                .toList();
    }

    private static double highest(Trace trace) {
        return trace.episodes().stream()
                .mapToDouble(each -> each.peaks().get(0).boundAmps())
                .max()
                .orElseThrow();
    }

    private static double figure(Layout layout, PlanEvent event) {
        return layout.eventPeaks().get(0).stream()
                .filter(each -> each.event() == event)
                .findFirst()
                .orElseThrow()
                .peakInrushAmps();
    }

    @Nested
    class ACommand {
        @Test
        void switchesItsSystemAlone() {
            assertThat(moves(play(on(0, "core")))).containsExactly("0.0 +desk", "1.0 +screen");
        }

        @Test
        void isRefusedWhereWhatItNeedsIsOff() {
            Trace trace = play(on(0, "hall"));

            assertThat(refused(trace)).containsExactly("system hall on: system hall needs core, which is off");
            assertThat(moves(trace)).isEmpty();
        }

        /** The core is through at 1 s, which would let another begin at 6 s; its desk is settled at 8 s. */
        @Test
        void waitsUntilWhatItNeedsIsOnAndSettled() {
            Trace trace = play(on(0, "core"), on(0.5, "hall"));

            assertThat(moves(trace)).containsExactly("0.0 +desk", "1.0 +screen", "8.0 +rack", "9.0 +amp");
            assertThat(trace.findings()).noneMatch(each -> each.grade() == EventFinding.Grade.BROKEN);
        }

        @Test
        void startsAtOnceWhereThatHasSettled() {
            Trace trace = play(on(0, "core"), on(8, "hall"));

            assertThat(moves(trace)).containsExactly("0.0 +desk", "1.0 +screen", "8.0 +rack", "9.0 +amp");
        }

        @Test
        void waitsForAnotherWhereOneComesUpAtATime() {
            hallNeedsCore = false;

            Trace trace = play(on(0, "hall"), on(0.5, "core"));

            assertThat(moves(trace)).containsExactly("0.0 +rack", "1.0 +amp", "6.0 +desk", "7.0 +screen");
        }

        /** Amp comes on at 1 s; 5 s later the core may begin, sooner it has to wait. */
        @Test
        void comesNoSoonerAfterAnotherThanTheTimeBetweenThem() {
            hallNeedsCore = false;

            assertThat(moves(play(on(0, "hall"), on(5.5, "core")))).contains("6.0 +desk");
            assertThat(moves(play(on(0, "hall"), on(6, "core")))).contains("6.0 +desk");
            assertThat(moves(play(on(0, "hall"), on(6.5, "core")))).contains("6.5 +desk");
        }

        @Test
        void waitsForNobodyWhereStartsMayCoincide() {
            hallNeedsCore = false;
            overlap = Overlap.ANY;

            Trace trace = play(on(0, "hall"), on(0.5, "core"));

            assertThat(moves(trace)).containsExactly("0.0 +rack", "0.5 +desk", "1.0 +amp", "1.5 +screen");
        }

        @Test
        void toAllSwitchesThemInTheOrderOfTheirNeeds() {
            Trace trace = play(at(0, Happening.SYSTEM_ON), at(60, Happening.SYSTEM_OFF));

            assertThat(moves(trace))
                    .containsExactly(
                            "0.0 +desk",
                            "1.0 +screen",
                            "8.0 +rack",
                            "9.0 +amp",
                            "60.0 -amp",
                            "61.0 -rack",
                            "61.0 -screen",
                            "62.0 -desk");
        }

        @Test
        void toGoOffIsRefusedWhileAnotherNeedsIt() {
            Trace trace = play(at(0, Happening.SYSTEM_ON), off(60, "core"));

            assertThat(refused(trace)).containsExactly("system core off: system hall needs it");
        }

        @Test
        void toGoOffTakesAlongWhatNeedsItWhereTheProjectSaysSo() {
            behaviour = behaviour.with().neededGroup(NeededGroup.TAKE_ALONG).build();

            Trace trace = play(at(0, Happening.SYSTEM_ON), off(60, "core"));

            assertThat(moves(trace).subList(4, 8))
                    .containsExactly("60.0 -amp", "61.0 -rack", "61.0 -screen", "62.0 -desk");
            assertThat(trace.findings()).noneMatch(each -> each.grade() == EventFinding.Grade.BROKEN);
        }
    }

    @Nested
    class Peaks {
        /** The core in full use, √2·(10 + 10), and of the hall the rack idling, √2·1, when amp draws 50 A. */
        @Test
        void ofOneThatStartsComeOntoTheFullUseOfTheOthers() {
            Trace trace = play(on(0, "core"), on(60, "hall"));

            double most = ROOT_2 * 20 + ROOT_2 + 50;
            assertThat(highest(trace)).isCloseTo(most, NEARLY);
            assertThat(halls().nodes().get(0).peaks().get(0).amps()).isCloseTo(most, NEARLY);
        }

        /** All off, no load always on: the return is a start from nothing, which the figure may not be below. */
        @Test
        void ofAReturnAreNoHigherThanTheFigureOfThePlan() {
            for (Overlap each : List.of(Overlap.ONE_AT_A_TIME, Overlap.ANY, Overlap.TOGETHER)) {
                overlap = each;

                Trace trace = play(at(0, Happening.SYSTEM_ON), mains(60, 0), mains(90, 100));

                assertThat(trace.episodes()
                                .get(trace.episodes().size() - 1)
                                .peaks()
                                .get(0)
                                .boundAmps())
                        .isLessThanOrEqualTo(figure(halls(), PlanEvent.RETURN) + 1e-6);
            }
        }

        /**
         * Stage released while all else is in use: √2·(10 + 10 + 10) + 50 = 92.43 A. Released with it, screen may be in use
         * already or not yet.
         */
        @Test
        void ofAReleaseComeOntoTheFullUseOfTheOthers() {
            Trace trace = play(
                    at(0, Happening.SYSTEM_ON),
                    at(60, Happening.EMERGENCY).withSystem("hall"),
                    at(90, Happening.RELEASE).withSystem("hall"));

            double peak = trace.episodes()
                    .get(trace.episodes().size() - 1)
                    .peaks()
                    .get(0)
                    .boundAmps();
            assertThat(peak).isCloseTo(ROOT_2 * 30 + 50, NEARLY);
            assertThat(figure(halls(), PlanEvent.RELEASE)).isCloseTo(ROOT_2 * 30 + 50, NEARLY);
        }
    }

    @Nested
    class AnEmergency {
        @Test
        void inOneSystemDropsWhatDropsThere() {
            Trace trace = play(
                    at(0, Happening.SYSTEM_ON),
                    at(60, Happening.EMERGENCY).withSystem("hall"),
                    at(90, Happening.RELEASE).withSystem("hall"));

            assertThat(moves(trace).subList(4, 6)).containsExactly("60.0 -amp", "91.0 +amp");
        }

        @Test
        void withoutASystemDropsItEverywhere() {
            Trace trace = play(at(0, Happening.SYSTEM_ON), at(60, Happening.EMERGENCY), at(90, Happening.RELEASE));

            assertThat(moves(trace).subList(4, 8))
                    .containsExactly("60.0 -screen", "60.0 -amp", "91.0 +screen", "97.0 +amp");
        }

        @Test
        void inOneSystemRefusesNoCommandOfAnother() {
            Trace trace = play(at(0, Happening.EMERGENCY).withSystem("hall"), on(1, "core"), on(60, "hall"));

            assertThat(moves(trace)).containsExactly("1.0 +desk", "2.0 +screen");
            assertThat(refused(trace)).containsExactly("system hall on: the emergency contact is closed");
        }
    }

    @Nested
    class TheMains {
        @Test
        void bringBackAllInTurnWhenTheyReturn() {
            Trace trace = play(at(0, Happening.SYSTEM_ON), mains(60, 0), mains(90, 100));

            assertThat(moves(trace).subList(8, 12))
                    .containsExactly("95.0 +desk", "96.0 +screen", "103.0 +rack", "104.0 +amp");
        }

        @Test
        void bringBackNothingWhereItIsToStayOff() {
            behaviour = behaviour.with().onReturn(Resume.STAY_OFF).build();

            Trace trace = play(at(0, Happening.SYSTEM_ON), mains(60, 0), mains(90, 100), on(120, "core"));

            assertThat(moves(trace).subList(8, 10)).containsExactly("120.0 +desk", "121.0 +screen");
            assertThat(trace.onAtEnd()).containsExactly("desk", "screen");
        }
    }

    /** Board B: lamp at 0 s goes off 30 s late; rig behind a contactor at 1 s, with pars behind the same. */
    private static Layout rig(boolean drops) {
        Project project = aProject()
                .boardTypes(aBoardType().startDelaySeconds(0).stepSeconds(1).with(type -> type.off(OffTiming.EACH)))
                .boards(aBoard("B"))
                .groups(drops ? aGroup("all").drops() : aGroup("all").holds())
                .loads(
                        plain("lamp").group("all").with(it -> it.offAfterSeconds(30)),
                        plain("rig").group("all").with(it -> it.switchedBy(SwitchedBy.CONTACTOR)),
                        plain("pars").with(it -> it.comesWith("rig")))
                .build();
        Plan plan = aPlan().board("B", 0, 1)
                .assignments(
                        anAssignment("lamp").at("P1", 1).on("B", 1),
                        anAssignment("rig").at("P1", 2).on("B", 2),
                        anAssignment("pars").at("P1", 7))
                .build();
        return Layout.of(project, PlanFinisher.timed(project, plan));
    }

    private static evenrise.model.LoadBuilder plain(String id) {
        return aLoad(id)
                .auxiliary()
                .runningAmps(10)
                .idleAmps(1)
                .inrushPeakAmps(50)
                .inrushHalfMillis(2);
    }

    @Nested
    class AnOffDelay {
        /** The mirror: rig and pars at once, lamp 1 s later and 30 s on top; as the plan's off_s. */
        @Test
        void comesOnTopOfTheMirror() {
            Trace trace = play(rig(false), at(0, Happening.SYSTEM_ON), at(60, Happening.SYSTEM_OFF));

            assertThat(moves(trace))
                    .containsExactly("0.0 +lamp", "1.0 +rig", "1.0 +pars", "60.0 -rig", "60.0 -pars", "91.0 -lamp");
            assertThat(rig(false).plan().assignments().get(0).offSeconds()).hasValue(31);
        }

        @Test
        void isCalledOffByACommandThatTurnsIt() {
            Trace trace = play(
                    rig(false), at(0, Happening.SYSTEM_ON), at(60, Happening.SYSTEM_OFF), at(80, Happening.SYSTEM_ON));

            assertThat(moves(trace).subList(5, 7)).containsExactly("81.0 +rig", "81.0 +pars");
            assertThat(trace.onAtEnd()).containsExactly("lamp", "rig", "pars");
        }

        @Test
        void isNotKeptInAnEmergencyAndThatIsSaid() {
            Trace trace = play(rig(true), at(0, Happening.SYSTEM_ON), at(60, Happening.EMERGENCY));

            assertThat(moves(trace).subList(3, 6)).containsExactly("60.0 -lamp", "60.0 -rig", "60.0 -pars");
            assertThat(trace.findings()).anyMatch(each -> each.rule().equals("off-delay"));
        }
    }

    @Nested
    class AContactor {
        private Trace sag(double percent, double... back) {
            List<ScriptEvent> events = new ArrayList<>(List.of(at(0, Happening.SYSTEM_ON), mains(60, percent)));
            for (int i = 0; i < back.length; i++) {
                events.add(mains(60.5 + 0.5 * i, back[i]));
            }
            return play(rig(false), events.toArray(ScriptEvent[]::new));
        }

        private static List<String> inrush(Trace trace) {
            return trace.steps().stream()
                    .filter(step -> step.kind() == EntryKind.INRUSH)
                    .map(step -> step.atSeconds() + " " + step.text())
                    .toList();
        }

        /** 75 % holds it surely; below, it may drop out, and all behind it comes back at once. The lamp rides it through. */
        @Test
        void dropsOutBelowItsVoltageAndConnectsAllBehindItTogether() {
            Trace trace = sag(74.9, 100);

            assertThat(inrush(trace)).containsExactly("60.5 2 loads draw their inrush anew, 2 of them switched");
            assertThat(trace.findings())
                    .anyMatch(each -> each.rule().equals("contactors")
                            && each.text().contains("1 contactor may have dropped out")
                            && each.text().contains("2 loads behind it (rig, pars)"));
            double base = ROOT_2;
            assertThat(trace.episodes().get(2).peaks().get(0).boundAmps())
                    .isCloseTo(ROOT_2 * 10 + 2 * (ROOT_2 * 10 + 50 - base), NEARLY);
        }

        @Test
        void staysAtItsVoltage() {
            assertThat(inrush(sag(75, 100))).isEmpty();
        }

        @Test
        void closesAgainFromAHigherVoltageThanItDroppedOutAt() {
            assertThat(inrush(sag(74.9, 84.9, 100)))
                    .containsExactly("61.0 2 loads draw their inrush anew, 2 of them switched");
            assertThat(inrush(sag(74.9, 85, 100)))
                    .containsExactly("60.5 2 loads draw their inrush anew, 2 of them switched");
        }

        @Test
        void thatFailsFailsForAllBehindIt() {
            Trace trace = play(rig(false), at(0, Happening.STAYS_OPEN).withLoad("rig"), at(1, Happening.SYSTEM_ON));

            assertThat(trace.onAtEnd()).containsExactly("lamp");
        }

        @Test
        void thatIsLateIsLateForAllBehindIt() {
            Trace trace = play(rig(false), at(0, Happening.LATE).late("rig", 2), at(1, Happening.SYSTEM_ON));

            assertThat(moves(trace)).containsExactly("1.0 +lamp", "4.0 +rig", "4.0 +pars");
        }
    }
}
