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

import evenrise.model.LoadBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Subject;
import evenrise.model.plan.SubjectKind;
import evenrise.model.project.Behaviour;
import evenrise.model.project.CounterCommand;
import evenrise.model.project.DeadBoard;
import evenrise.model.project.DeadContacts;
import evenrise.model.project.LockRefuses;
import evenrise.model.project.NeededGroup;
import evenrise.model.project.OnInEmergency;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseWatch;
import evenrise.model.project.Project;
import evenrise.model.project.Restart;
import evenrise.model.project.Resume;
import evenrise.model.project.RideThrough;
import evenrise.model.project.SequenceInEmergency;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/**
 * One small hall, on phase A: board H holds the rack (dsp at 0 s, settled at 2 s; screen at 1 s), board D drops the stage
 * (amp-1 at 3 s, amp-2 at 4 s), and an outlet is not switched. Amplifiers peak at 100 A over a base of 0.
 */
class RehearsalTest {
    private Behaviour behaviour = Behaviour.DEFAULT;
    private boolean racksRideThrough;

    private Layout hall() {
        ProjectBuilder project = aProject()
                .behaviour(behaviour)
                .boards(aBoard("H"), aBoard("D"))
                .boardTypes(aBoardType().startDelaySeconds(0, 3).stepSeconds(1))
                .groups(
                        aGroup("rack").holds(),
                        aGroup("video").holds(),
                        aGroup("stage").drops())
                .loads(
                        dsp(),
                        aLoad("screen").auxiliary().group("video").idleAmps(0).inrushPeakAmps(20),
                        aLoad("amp-1").amplifier().group("stage").idleAmps(0).inrushPeakAmps(100),
                        aLoad("amp-2").amplifier().group("stage").idleAmps(0).inrushPeakAmps(100),
                        aLoad("outlet").unswitched().idleAmps(0).inrushPeakAmps(10));
        Project built = project.build();
        return Layout.of(
                built,
                PlanFinisher.timed(
                        built,
                        aPlan().board("H", 0, 1)
                                .board("D", 3, 1)
                                .assignments(
                                        anAssignment("dsp").at("P1", 1).on("H", 1),
                                        anAssignment("screen").at("P1", 2).on("H", 2),
                                        anAssignment("amp-1").at("P1", 7).on("D", 1),
                                        anAssignment("amp-2").at("P1", 8).on("D", 2),
                                        anAssignment("outlet").at("P1", 13))
                                .build()));
    }

    private LoadBuilder dsp() {
        LoadBuilder dsp = aLoad("dsp")
                .processing()
                .settleSeconds(2)
                .group("rack")
                .idleAmps(0)
                .inrushPeakAmps(30);
        return racksRideThrough
                ? dsp.rideThrough(RideThrough.builder()
                        .remainingPercent(40)
                        .withoutMillis(0)
                        .build())
                : dsp;
    }

    private static ScriptEvent at(double seconds, Happening event) {
        return ScriptEvent.of(OptionalDouble.of(seconds), event);
    }

    private static ScriptEvent mains(double seconds, double percent, Phase... phases) {
        return at(seconds, Happening.MAINS).voltage(percent, List.of(phases));
    }

    private Trace play(ScriptEvent... events) {
        return Rehearsal.of(ConnectedLoads.of(hall()), new EventScript("test", List.of(events)));
    }

    /** Every breaker that moves, as {@code 3.0 +amp-1}. */
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

    private static List<String> rules(Trace trace) {
        return trace.findings().stream().map(EventFinding::rule).toList();
    }

    private static Behaviour with(Object... changes) {
        Behaviour it = Behaviour.DEFAULT;
        return Behaviour.builder()
                .brownoutPercent(it.brownoutPercent())
                .brownoutHoldSeconds(it.brownoutHoldSeconds())
                .steadyPercent(it.steadyPercent())
                .steadyWaitSeconds(it.steadyWaitSeconds())
                .onReturn(change(it.onReturn(), changes, 0))
                .phaseWatch(change(it.phaseWatch(), changes, 0))
                .onRelease(change(it.onRelease(), changes, 1))
                .releaseWaitSeconds(it.releaseWaitSeconds())
                .onInEmergency(change(it.onInEmergency(), changes, 0))
                .sequenceInEmergency(change(it.sequenceInEmergency(), changes, 0))
                .counterCommand(change(it.counterCommand(), changes, 0))
                .restart(change(it.restart(), changes, 0))
                .neededGroup(change(it.neededGroup(), changes, 0))
                .lockRefuses(change(it.lockRefuses(), changes, 0))
                .deadBoard(change(it.deadBoard(), changes, 0))
                .deadContacts(change(it.deadContacts(), changes, 0))
                .reinrushPercent(it.reinrushPercent())
                .reinrushAfterMillis(it.reinrushAfterMillis())
                .build();
    }

    /** The n-th change of the value's kind, or the value. */
    @SuppressWarnings("unchecked")
    private static <T> T change(T value, Object[] changes, int n) {
        int seen = 0;
        for (Object each : changes) {
            if (each.getClass() == value.getClass() && seen++ == n) {
                return (T) each;
            }
        }
        return value;
    }

    @Nested
    class OnAndOff {
        @Test
        void comeStepByStepAndInReverse() {
            Trace trace = play(at(0, Happening.SYSTEM_ON), at(10, Happening.SYSTEM_OFF));

            assertThat(moves(trace))
                    .containsExactly(
                            "0.0 +dsp",
                            "1.0 +screen",
                            "3.0 +amp-1",
                            "4.0 +amp-2",
                            "10.0 -amp-2",
                            "11.0 -amp-1",
                            "13.0 -screen",
                            "14.0 -dsp");
            assertThat(trace.shown()).isEqualTo(Display.DOWN);
            assertThat(trace.findings()).isEmpty();
        }

        @Test
        void turnAtOnceByDefault() {
            // off at 3.5 s: what is on goes off in reverse, the last to come first
            assertThat(moves(play(at(0, Happening.SYSTEM_ON), at(3.5, Happening.SYSTEM_OFF))))
                    .containsExactly("0.0 +dsp", "1.0 +screen", "3.0 +amp-1", "3.5 -amp-1", "5.5 -screen", "6.5 -dsp");
        }

        @Test
        void goThroughTheWholeSequenceAgainAfterHalfOfIt() {
            // on again at 6 s, with dsp still on: all of the sequence from its start, dsp stays on
            assertThat(moves(play(
                            at(0, Happening.SYSTEM_ON), at(3.5, Happening.SYSTEM_OFF), at(6, Happening.SYSTEM_ON))))
                    .containsExactly(
                            "0.0 +dsp",
                            "1.0 +screen",
                            "3.0 +amp-1",
                            "3.5 -amp-1",
                            "5.5 -screen",
                            "7.0 +screen",
                            "9.0 +amp-1",
                            "10.0 +amp-2");
        }

        @Test
        void goOnWhereTheFirstIsMissingWhereTheProjectSaysSo() {
            behaviour = with(Restart.MISSING);

            // on again at 6 s: screen is the first missing, its second of the sequence is now
            assertThat(moves(play(
                                    at(0, Happening.SYSTEM_ON),
                                    at(3.5, Happening.SYSTEM_OFF),
                                    at(6, Happening.SYSTEM_ON)))
                            .subList(5, 8))
                    .containsExactly("6.0 +screen", "8.0 +amp-1", "9.0 +amp-2");
        }

        @Test
        void comeOnNoSoonerAfterWhatIsOnThanInThePlan() {
            behaviour = with(Restart.MISSING);

            // stopped at 0.5 s and released at 0.6 s: the screen, first to be missing, at 1 s as if nothing had been
            assertThat(moves(
                            play(at(0, Happening.SYSTEM_ON), at(0.5, Happening.EMERGENCY), at(0.6, Happening.RELEASE))))
                    .containsExactly("0.0 +dsp", "1.0 +screen", "3.0 +amp-1", "4.0 +amp-2");
        }

        @Test
        void waitForTheEndWhereTheProjectSaysSo() {
            behaviour = with(CounterCommand.WAIT);

            assertThat(moves(play(at(0, Happening.SYSTEM_ON), at(3.5, Happening.SYSTEM_OFF))))
                    .contains("4.0 +amp-2", "4.0 -amp-2", "5.0 -amp-1", "8.0 -dsp");
        }

        @Test
        void thatHaveWaitedAreRefusedAsIfTheyCameNow() {
            behaviour = with(CounterCommand.WAIT);

            Trace trace = play(
                    at(0, Happening.SYSTEM_ON),
                    at(10, Happening.SYSTEM_OFF),
                    at(11, Happening.SYSTEM_ON),
                    at(12, Happening.EMERGENCY));

            assertThat(refused(trace)).containsExactly("on command, which had waited: the emergency contact is closed");
            assertThat(trace.onAtEnd()).isEmpty();
        }

        @Test
        void areRefusedWhereTheProjectSaysSo() {
            behaviour = with(CounterCommand.REFUSE);

            Trace trace = play(at(0, Happening.SYSTEM_ON), at(3.5, Happening.SYSTEM_OFF));

            assertThat(refused(trace)).containsExactly("off command: a sequence is under way");
            assertThat(trace.shown()).isEqualTo(Display.UP);
        }
    }

    @Nested
    class Groups {
        @Test
        void goOffInReverseAndComeBackInSequence() {
            Trace trace = play(
                    at(0, Happening.SYSTEM_ON),
                    at(10, Happening.GROUP_OFF).withGroup("stage"),
                    at(20, Happening.GROUP_ON).withGroup("stage"));

            assertThat(moves(trace).subList(4, 8))
                    .containsExactly("10.0 -amp-2", "11.0 -amp-1", "23.0 +amp-1", "24.0 +amp-2");
        }

        @Test
        void areFollowedThroughTheTrace() {
            Trace trace = play(at(0, Happening.SYSTEM_ON), at(10, Happening.EMERGENCY));

            assertThat(trace.groups())
                    .extracting(each -> each.atSeconds() + " " + each.group() + " "
                            + each.state().words())
                    .containsExactly(
                            "0.0 rack on", "1.0 video on", "3.0 stage partly on", "4.0 stage on", "10.0 stage off");
        }

        @Test
        void areNotTakenFromUnderWhatNeedsThem() {
            Trace trace =
                    play(at(0, Happening.SYSTEM_ON), at(10, Happening.GROUP_OFF).withGroup("rack"));

            assertThat(refused(trace)).containsExactly("group rack off: amp-1, amp-2 need it");
            assertThat(trace.onAtEnd()).hasSize(4);
        }

        @Test
        void takeAlongWhatNeedsThemWhereTheProjectSaysSo() {
            behaviour = with(NeededGroup.TAKE_ALONG);

            assertThat(moves(play(
                                    at(0, Happening.SYSTEM_ON),
                                    at(10, Happening.GROUP_OFF).withGroup("rack")))
                            .subList(4, 7))
                    .containsExactly("10.0 -amp-2", "11.0 -amp-1", "14.0 -dsp");
        }
    }

    @Nested
    class Supply {
        @Test
        void opensEverythingInOneGoWhenLowForTwoSeconds() {
            Trace trace = play(at(0, Happening.SYSTEM_ON), mains(10, 70));

            assertThat(moves(trace).subList(4, 8)).allMatch(move -> move.startsWith("12.0 -"));
            assertThat(trace.shown()).isEqualTo(Display.SUPPLY_LOW);
        }

        @Test
        void isRiddenThroughWhenLowForLess() {
            assertThat(moves(play(at(0, Happening.SYSTEM_ON), mains(10, 70), mains(11.99, 100))))
                    .hasSize(4);
        }

        @Test
        void beginsTheSequenceAfterFiveSteadySeconds() {
            Trace trace = play(at(0, Happening.SYSTEM_ON), mains(10, 0), mains(20, 100));

            assertThat(moves(trace).subList(8, 12))
                    .containsExactly("25.0 +dsp", "26.0 +screen", "28.0 +amp-1", "29.0 +amp-2");
            assertThat(trace.findings()).isEmpty();
        }

        @Test
        void waitsAnewAfterASecondDip() {
            Trace trace = play(at(0, Happening.SYSTEM_ON), mains(10, 0), mains(20, 100), mains(23, 85), mains(24, 100));

            assertThat(moves(trace).subList(8, 9)).containsExactly("29.0 +dsp");
        }

        @Test
        void stayOffAfterwardsWhereTheProjectSaysSo() {
            behaviour = with(Resume.STAY_OFF);

            Trace trace = play(at(0, Happening.SYSTEM_ON), mains(10, 0), mains(20, 100));

            assertThat(trace.onAtEnd()).isEmpty();
            assertThat(trace.shown()).isEqualTo(Display.DOWN);
        }

        @Test
        void returnsOnUnswitchedLoadsAtOnce() {
            Trace trace = play(at(0, Happening.SYSTEM_ON), mains(10, 0), mains(20, 100));

            // outlet 10 A beside √2·10 A in use; the switched ones are open
            assertThat(trace.episodes().get(3).peaks().get(0).peakInrushAmps()).isCloseTo(24.142, within(1e-3));
        }

        @Test
        void meetsClosedBreakersAfterADeepDipThatWasTooShort() {
            Trace trace = play(at(0, Happening.SYSTEM_ON), mains(10, 0), mains(11, 100));

            // dsp 30 + screen 20 + amplifiers 100 + 100 + outlet 10, phases: A dsp, screen and outlet row 1, 7
            assertThat(rules(trace)).containsExactly("ridden-through");
            assertThat(trace.findings().get(0).text())
                    .contains("4 closed breakers", "1 of them processing", "behind live amplifiers");
        }

        @Test
        void drawsNoInrushAnewAfterTwentyMilliseconds() {
            assertThat(play(at(0, Happening.SYSTEM_ON), mains(10, 0), mains(10.02, 100))
                            .findings())
                    .isEmpty();
        }

        @Test
        void drawsNoInrushAnewFromALoadThatRidesThrough() {
            racksRideThrough = true;

            // dsp does with 40 %; the other three switched loads do not
            assertThat(play(at(0, Happening.SYSTEM_ON), mains(10, 45), mains(11, 100))
                            .findings()
                            .get(0)
                            .text())
                    .contains("3 closed breakers (screen, amp-1, amp-2)");
        }

        @Test
        void opensEverythingOnTheLossOfOnePhase() {
            assertThat(play(at(0, Happening.SYSTEM_ON), mains(10, 0, Phase.B)).onAtEnd())
                    .isEmpty();
        }

        @Test
        void doesNotSeeTheLossOfOnePhaseWhereTheProjectSaysSo() {
            behaviour = with(PhaseWatch.ALL);

            Trace trace = play(at(0, Happening.SYSTEM_ON), mains(10, 0, Phase.A), mains(20, 100, Phase.A));

            assertThat(trace.onAtEnd()).hasSize(4);
            assertThat(rules(trace)).contains("ridden-through");
        }

        @Test
        void refusesToComeOnWhileLow() {
            assertThat(refused(play(mains(0, 50), at(1, Happening.SYSTEM_ON))))
                    .containsExactly("on command: the supply is low");
        }
    }

    @Nested
    class Emergency {
        @Test
        void dropsAtOnceAndComesBackInSequence() {
            Trace trace = play(at(0, Happening.SYSTEM_ON), at(10, Happening.EMERGENCY), at(20, Happening.RELEASE));

            assertThat(moves(trace).subList(4, 8))
                    .containsExactly("10.0 -amp-1", "10.0 -amp-2", "23.0 +amp-1", "24.0 +amp-2");
            assertThat(trace.findings()).isEmpty();
        }

        @Test
        void stopsASequenceThatComesUp() {
            Trace trace = play(at(0, Happening.SYSTEM_ON), at(0.5, Happening.EMERGENCY), at(20, Happening.RELEASE));

            assertThat(moves(trace)).containsExactly("0.0 +dsp", "21.0 +screen", "23.0 +amp-1", "24.0 +amp-2");
        }

        @Test
        void letsWhatHoldsGoOnWhereTheProjectSaysSo() {
            behaviour = with(SequenceInEmergency.GO_ON);

            Trace trace = play(at(0, Happening.SYSTEM_ON), at(0.5, Happening.EMERGENCY), at(20, Happening.RELEASE));

            assertThat(moves(trace)).containsExactly("0.0 +dsp", "1.0 +screen", "23.0 +amp-1", "24.0 +amp-2");
        }

        @Test
        void refusesToComeOn() {
            Trace trace = play(at(0, Happening.EMERGENCY), at(1, Happening.SYSTEM_ON));

            assertThat(refused(trace)).containsExactly("on command: the emergency contact is closed");
            assertThat(trace.onAtEnd()).isEmpty();
        }

        @Test
        void bringsUpWhatHoldsWhereTheProjectSaysSo() {
            behaviour = with(OnInEmergency.HELD_GROUPS, SequenceInEmergency.GO_ON);

            Trace trace = play(at(0, Happening.EMERGENCY), at(1, Happening.SYSTEM_ON), at(20, Happening.RELEASE));

            assertThat(moves(trace)).containsExactly("1.0 +dsp", "2.0 +screen", "23.0 +amp-1", "24.0 +amp-2");
        }

        @Test
        void leavesWhatDroppedOffWhereTheProjectSaysSo() {
            behaviour = with(Resume.SEQUENCE, Resume.STAY_OFF);

            Trace trace = play(
                    at(0, Happening.SYSTEM_ON),
                    at(10, Happening.EMERGENCY),
                    at(20, Happening.RELEASE),
                    at(30, Happening.SYSTEM_ON));

            assertThat(moves(trace).subList(6, 8)).containsExactly("33.0 +amp-1", "34.0 +amp-2");
        }
    }

    @Nested
    class Lock {
        @Test
        void refusesCommandsAndNothingElse() {
            Trace trace = play(
                    at(0, Happening.SYSTEM_ON),
                    at(10, Happening.LOCK),
                    at(11, Happening.SYSTEM_OFF),
                    at(12, Happening.EMERGENCY));

            assertThat(refused(trace)).containsExactly("off command: the system is locked");
            assertThat(trace.onAtEnd()).containsExactly("dsp", "screen");
            assertThat(trace.locked()).isTrue();
        }

        @Test
        void refusesOffAloneWhereTheProjectSaysSo() {
            behaviour = with(LockRefuses.OFF_COMMANDS);

            Trace trace = play(at(0, Happening.LOCK), at(1, Happening.SYSTEM_ON), at(20, Happening.SYSTEM_OFF));

            assertThat(refused(trace)).containsExactly("off command: the system is locked");
        }
    }

    @Nested
    class Faults {
        @Test
        void ofTheBoardOfProcessingLeaveAmplifiersOnWithoutIt() {
            Trace trace = play(at(0, Happening.BOARD_DEAD).withBoard("H"), at(1, Happening.SYSTEM_ON));

            assertThat(trace.onAtEnd()).containsExactly("amp-1", "amp-2");
            assertThat(rules(trace)).containsExactly("processing-first", "stays-off");
        }

        @Test
        void ofTheBoardOfProcessingHoldAmplifiersBackWhereTheProjectSaysSo() {
            behaviour = with(DeadBoard.STOP);

            Trace trace = play(at(0, Happening.BOARD_DEAD).withBoard("H"), at(1, Happening.SYSTEM_ON));

            assertThat(trace.onAtEnd()).isEmpty();
            assertThat(rules(trace)).containsExactly("stays-off", "held-back");
        }

        @Test
        void ofABoardLeaveItsBreakersClosedThroughABrownout() {
            Trace trace = play(
                    at(0, Happening.SYSTEM_ON),
                    at(10, Happening.BOARD_DEAD).withBoard("D"),
                    mains(20, 0),
                    mains(30, 100));

            assertThat(rules(trace)).contains("return");
            assertThat(trace.steps()).anyMatch(step -> step.text().equals("its board is dead: it stays closed"));
        }

        @Test
        void ofABoardOpenItsBreakersWhereTheProjectSaysSo() {
            behaviour = with(DeadContacts.OPEN);

            assertThat(play(
                                    at(0, Happening.SYSTEM_ON),
                                    at(10, Happening.BOARD_DEAD).withBoard("D"))
                            .onAtEnd())
                    .containsExactly("dsp", "screen");
        }

        @Test
        void thatAreMendedBringTheLoadsBackInSequence() {
            Trace trace = play(
                    at(0, Happening.BOARD_DEAD).withBoard("D"),
                    at(0, Happening.SYSTEM_ON),
                    at(20, Happening.BOARD_BACK).withBoard("D"));

            assertThat(moves(trace)).containsExactly("0.0 +dsp", "1.0 +screen", "23.0 +amp-1", "24.0 +amp-2");
        }

        @Test
        void ofABreakerThatDoesNotOpenLeaveItOnDuringAnEmergency() {
            Trace trace = play(
                    at(0, Happening.SYSTEM_ON),
                    at(10, Happening.STAYS_CLOSED).withLoad("amp-1"),
                    at(11, Happening.EMERGENCY));

            assertThat(trace.onAtEnd()).contains("amp-1");
            assertThat(rules(trace)).contains("emergency", "stays-on", "group-half-on");
        }

        @Test
        void ofAProcessorThatClosesLateBreakTheOrder() {
            Trace trace = play(at(0, Happening.LATE).late("dsp", 3.5), at(0, Happening.SYSTEM_ON));

            // dsp at 3.5 s, amp-1 at 3 s; amp-2 at 4 s, before dsp has settled at 5.5 s
            assertThat(rules(trace)).contains("processing-first", "amplifiers-last");
            assertThat(trace.findings())
                    .anyMatch(each -> each.text().startsWith("amp-2 comes on before load dsp has settled"));
        }

        @Test
        void areToldInParts() {
            Trace trace = play(at(0, Happening.LATE).late("dsp", 3.5), at(0, Happening.SYSTEM_ON));

            assertThat(trace.findings()).anySatisfy(each -> {
                assertThat(each.check()).isEqualTo("processing-first");
                assertThat(each.kind()).isEqualTo("not-settled");
                assertThat(each.gravity()).isEqualTo(Grade.BREAKS);
                assertThat(each.subjects())
                        .containsExactly(new Subject(SubjectKind.LOAD, "amp-2"), new Subject(SubjectKind.LOAD, "dsp"));
                assertThat(each.message()).isEqualTo(each.text() + ".");
            });
        }

        @Test
        void ofAnAmplifierThatClosesEarlyBreakTheOrder() {
            Trace trace = play(at(0, Happening.EARLY).late("amp-1", 2.5), at(0, Happening.SYSTEM_ON));

            // amp-1 at 0.5 s: dsp has not settled, and the screen comes on behind it
            assertThat(moves(trace)).startsWith("0.0 +dsp", "0.5 +amp-1");
            assertThat(rules(trace)).containsExactly("processing-first", "amplifiers-last");
        }

        @Test
        void thatAreMendedInTimeAreStillSaid() {
            Trace trace = play(
                    at(0, Happening.BOARD_DEAD).withBoard("D"),
                    at(0, Happening.SYSTEM_ON),
                    at(20, Happening.BOARD_BACK).withBoard("D"));

            assertThat(rules(trace)).containsExactly("stays-off");
        }

        @Test
        void ofABreakerThatIsStillToCloseDoNotOutliveAnEmergency() {
            // amp-1 is told to close at 3 s and would at 8 s; the contact closes at 5 s
            Trace trace = play(
                    at(0, Happening.LATE).late("amp-1", 5), at(0, Happening.SYSTEM_ON), at(5, Happening.EMERGENCY));

            assertThat(moves(trace)).containsExactly("0.0 +dsp", "1.0 +screen", "4.0 +amp-2", "5.0 -amp-2");
        }

        @Test
        void ofABreakerThatDoesNotCloseAreSaid() {
            Trace trace = play(at(0, Happening.STAYS_OPEN).withLoad("amp-2"), at(0, Happening.SYSTEM_ON));

            assertThat(rules(trace)).containsExactly("group-half-on", "stays-off");
            assertThat(trace.shown()).isEqualTo(Display.UP); // nobody has told the control
        }
    }

    @Nested
    class Time {
        @Test
        void ofAHappeningWithoutOneIsFiveSecondsAfterAllIsAtRest() {
            ScriptEvent off = ScriptEvent.of(OptionalDouble.empty(), Happening.SYSTEM_OFF);

            assertThat(moves(play(at(0, Happening.SYSTEM_ON), off)).get(4)).isEqualTo("9.0 -amp-2");
        }

        @Test
        void ofABreakerMayVaryWithinTheTolerance() {
            Trace trace = Rehearsal.of(
                    ConnectedLoads.of(hall()),
                    new EventScript("test", List.of(at(0, Happening.SYSTEM_ON))),
                    (load, closing) -> load.equals("amp-1") ? -0.25 : 0.25);

            assertThat(moves(trace)).containsExactly("0.25 +dsp", "1.25 +screen", "2.75 +amp-1", "4.25 +amp-2");
        }
    }
}
