package evenrise.model.event;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.plan.Plan;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.NodeSource;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.PlanEvent;
import evenrise.model.project.Project;
import evenrise.model.project.Secondary;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/**
 * <pre>
 * supply 240 V ─┬─ T delta-wye 120 V ── P1: dsp A, fan B (not switched)     T's inrush 100 A, half in 50 ms
 *               └─ M (or GEN) ── P2: amp A, ctl B (not switched)
 * </pre>
 *
 * Board H in P1 switches dsp at 0 s and amp at 1 s. In ampere, running, idle, peak: dsp 10, 2, 60; fan 4, 4, 20; amp 20, 2,
 * 90; ctl 1, 1, 5, each inrush gone by the next instant. k = 120/240, k/√3 = 0.288675; line A of T draws that of e on a and
 * c, B of b and a, C of c and b.
 */
class PlantEventsTest {
    private static final Offset<Double> NEARLY = within(1e-6);
    private static final double ROOT_2 = Math.sqrt(2);
    private static final double K_3 = 0.5 / Math.sqrt(3);
    /** In use: √2 times the running current; anew: with 60 − √2·2 or 90 − √2·2 beside it. */
    private static final double DSP_IN_USE = ROOT_2 * 10;

    private static final double DSP_ANEW = DSP_IN_USE + 60 - ROOT_2 * 2;
    private static final double AMP_IN_USE = ROOT_2 * 20;
    private static final double AMP_ANEW = AMP_IN_USE + 90 - ROOT_2 * 2;

    private double halfMillis = 50;
    private double transferSeconds = 3;
    private Optional<String> fedBy = Optional.empty();
    private boolean statesInrush = true;

    private Layout plant() {
        Transformer transformer = Transformer.builder()
                .connection(TransformerConnection.DELTA_WYE)
                .secondary(Secondary.builder()
                        .system(PhaseSystem.THREE_PHASE)
                        .lineToNeutralVolts(120)
                        .build())
                .inrushPeakAmps(statesInrush ? OptionalDouble.of(100) : OptionalDouble.empty())
                .inrushHalfMillis(halfMillis)
                .build();
        Project project = aProject()
                .supply(aSupply().lineToNeutralVolts(240))
                .panels(
                        aPanel("P1").with(panel -> panel.fedFrom("T")),
                        aPanel("P2").with(panel -> panel.fedFrom("M")))
                .boardTypes(aBoardType().startDelaySeconds(0).stepSeconds(1))
                .boards(aBoard("H").in("P1").reaches("P1", "P2").with(board -> board.fedBy(fedBy)))
                .loads(
                        aLoad("dsp")
                                .processing()
                                .runningAmps(10)
                                .idleAmps(2)
                                .inrushPeakAmps(60)
                                .inrushHalfMillis(2),
                        aLoad("amp")
                                .amplifier()
                                .runningAmps(20)
                                .idleAmps(2)
                                .inrushPeakAmps(90)
                                .inrushHalfMillis(2),
                        aLoad("fan")
                                .unswitched()
                                .runningAmps(4)
                                .idleAmps(4)
                                .inrushPeakAmps(20)
                                .inrushHalfMillis(2),
                        aLoad("ctl")
                                .unswitched()
                                .runningAmps(1)
                                .idleAmps(1)
                                .inrushPeakAmps(5)
                                .inrushHalfMillis(2))
                .with(it -> it.nodes(List.of(
                        DistributionNode.builder()
                                .id("T")
                                .ratedAmps(400)
                                .transformer(transformer)
                                .build(),
                        DistributionNode.builder()
                                .id("M")
                                .ratedAmps(400)
                                .alternateFedFrom("GEN")
                                .transferSeconds(transferSeconds)
                                .build(),
                        DistributionNode.builder()
                                .id("GEN")
                                .ratedAmps(400)
                                .source(NodeSource.builder()
                                        .system(PhaseSystem.THREE_PHASE)
                                        .lineToNeutralVolts(240)
                                        .frequencyHertz(60)
                                        .build())
                                .build())))
                .build();
        Plan plan = aPlan().board("H", 0, 1)
                .assignments(
                        anAssignment("dsp").at("P1", 1).on("H", 1),
                        anAssignment("amp").at("P2", 1).on("H", 2),
                        anAssignment("fan").at("P1", 3),
                        anAssignment("ctl").at("P2", 3))
                .build();
        return Layout.of(project, PlanFinisher.timed(project, plan));
    }

    private static ScriptEvent at(double seconds, Happening event) {
        return ScriptEvent.of(OptionalDouble.of(seconds), event);
    }

    private static ScriptEvent mains(double seconds, double percent, String node, Phase... phases) {
        return at(seconds, Happening.MAINS).voltage(percent, List.of(phases)).atNode(node);
    }

    private Trace play(ScriptEvent... events) {
        List<ScriptEvent> all = new ArrayList<>(List.of(at(0, Happening.SYSTEM_ON)));
        all.addAll(List.of(events));
        return Rehearsal.of(ConnectedLoads.of(plant()), new EventScript("test", all));
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

    private static List<String> inrush(Trace trace) {
        return trace.steps().stream()
                .filter(step -> step.kind() == EntryKind.INRUSH)
                .map(step -> step.atSeconds() + " " + step.text())
                .toList();
    }

    private static List<String> rules(Trace trace) {
        return trace.findings().stream()
                .map(each -> each.grade() + " " + each.rule())
                .toList();
    }

    private static double drawn(Trace trace, double seconds, String node, Phase phase) {
        return trace.readings().stream()
                .filter(each -> each.atSeconds() == seconds && each.node().equals(node) && each.phase() == phase)
                .mapToDouble(PhaseReading::drawnAmps)
                .findFirst()
                .orElseThrow();
    }

    private static NodePeak peak(Trace trace, int episode, String node) {
        return trace.episodes().get(episode).peaks().stream()
                .filter(each -> each.node().equals(node))
                .findFirst()
                .orElseThrow();
    }

    private static final List<String> ON = List.of("0.0 +dsp", "1.0 +amp");

    private static List<String> onThen(String... more) {
        List<String> all = new ArrayList<>(ON);
        all.addAll(List.of(more));
        return all;
    }

    @Nested
    class Sequence {
        /** Amp's 90 A, and of dsp's √2·2 what T draws on A; at T itself 60 A on a. */
        @Test
        void isSeenThroughTransformersAsInTheFigureOfThePlan() {
            Trace trace = play();

            assertThat(peak(trace, 0, "supply").boundAmps()).isCloseTo(90 + K_3 * ROOT_2 * 2, NEARLY);
            assertThat(peak(trace, 0, "T").boundAmps()).isCloseTo(60, NEARLY);
            assertThat(plant().nodes().get(0).peaks().get(0).amps()).isCloseTo(90 + K_3 * ROOT_2 * 2, NEARLY);
            assertThat(peak(trace, 0, "GEN").boundAmps()).isZero();
        }
    }

    @Nested
    class LossOfAPanel {
        @Test
        void takesItsLoadsFromEverythingAbove() {
            Trace trace = play(mains(10, 0, "P2"));

            assertThat(drawn(trace, 10, "P2", Phase.A)).isZero();
            assertThat(drawn(trace, 10, "M", Phase.A)).isZero();
            assertThat(drawn(trace, 10, "supply", Phase.A)).isCloseTo(K_3 * DSP_IN_USE, NEARLY);
            assertThat(moves(trace)).isEqualTo(ON);
        }

        @Test
        void opensAllThatItsBoardsSwitchOnceItHasLastedForLongerThanTheHold() {
            Trace trace = play(mains(10, 0, "P1"), mains(12.5, 100, "P1"));

            assertThat(moves(trace)).isEqualTo(onThen("12.0 -dsp", "12.0 -amp", "17.5 +dsp", "18.5 +amp"));
        }

        @Test
        void isRiddenThroughToTheHold() {
            Trace trace = play(mains(10, 0, "P1"), mains(12, 100, "P1"));

            assertThat(moves(trace)).isEqualTo(ON);
            assertThat(inrush(trace)).containsExactly("12.0 2 loads draw their inrush anew, 1 of them switched");
            assertThat(peak(trace, 2, "P1").boundAmps()).isCloseTo(DSP_ANEW, NEARLY);
        }

        /** The board that switches amp sits elsewhere and does not see it: so amp comes back at once. */
        @Test
        void leavesLoadsOfBoardsElsewhereConnectedUntilItReturns() {
            Trace trace = play(mains(10, 0, "P2"), mains(100, 100, "P2"));

            assertThat(moves(trace)).isEqualTo(ON);
            assertThat(drawn(trace, 100, "P2", Phase.A)).isCloseTo(AMP_ANEW, NEARLY);
            assertThat(rules(trace)).contains("NOTE ridden-through");
        }

        @Test
        void ofProcessingIsSaidOfAmplifiersThatStayLive() {
            Trace trace = play(mains(10, 0, "P1"));

            assertThat(trace.findings())
                    .anyMatch(each -> each.rule().equals("without-power")
                            && each.text().contains("1 amplifier (amp) stays live while processing dsp"));
        }
    }

    @Nested
    class LossOfANode {
        @Test
        void isThatOfAllBelowIt() {
            Trace trace = play(mains(10, 0, "T"));

            assertThat(drawn(trace, 10, "supply", Phase.A)).isCloseTo(AMP_IN_USE, NEARLY);
            assertThat(drawn(trace, 10, "supply", Phase.B)).isCloseTo(ROOT_2, NEARLY);
            assertThat(moves(trace)).isEqualTo(onThen("12.0 -dsp", "12.0 -amp"));
        }

        @Test
        void leavesSourcesBesideTheSupplyAlone() {
            Trace trace = play(at(5, Happening.TRANSFER).atNode("M"), mains(20, 0, "supply"));

            assertThat(drawn(trace, 20, "supply", Phase.A)).isZero();
            assertThat(trace.readings())
                    .filteredOn(each -> each.atSeconds() == 22 && each.node().equals("GEN"))
                    .isNotEmpty(); // ctl stays on GEN, amp is opened by H, which has lost its feed
            assertThat(drawn(trace, 22, "GEN", Phase.A)).isZero();
            assertThat(drawn(trace, 22, "GEN", Phase.B)).isCloseTo(ROOT_2, NEARLY);
        }
    }

    @Nested
    class Transformers {
        /** Fan's √2·4 + (20 − √2·4) through T, and its own 100 A: on B and C. Ctl's 5 A on B. */
        @Test
        void drawTheirInrushWhenTheMainsReturn() {
            Trace trace = play(mains(10, 0, "supply"), mains(20, 100, "supply"));

            assertThat(peak(trace, 3, "supply").boundAmps()).isCloseTo(100 + K_3 * 20 + 5, NEARLY);
            assertThat(peak(trace, 3, "supply").peakPhase()).isEqualTo(Phase.B);
            assertThat(peak(trace, 3, "T").boundAmps()).isCloseTo(20, NEARLY);
            assertThat(figure(PlanEvent.RETURN)).isCloseTo(100 + K_3 * 20 + 5, NEARLY);
        }

        /** Half in 5 s: 50 A are left when the sequence may begin, 100·2^(−6/5) = 43.528 A when amp comes on at 26 s. */
        @Test
        void goOnDrawingItInTheSequence() {
            halfMillis = 5000;

            Trace trace = play(mains(10, 0, "supply"), mains(20, 100, "supply"));

            double normal = 90 + K_3 * ROOT_2 * 2;
            assertThat(peak(trace, 4, "supply").boundAmps()).isCloseTo(normal + 100 * Math.pow(2, -1.2), NEARLY);
            assertThat(figure(PlanEvent.RETURN)).isCloseTo(normal + 50, NEARLY);
        }

        @Test
        void drawItInADipThatIsRiddenThrough() {
            Trace trace = play(mains(10, 0, "supply"), mains(11, 100, "supply"));

            double dip = AMP_ANEW + K_3 * DSP_ANEW + 100;
            assertThat(peak(trace, 2, "supply").boundAmps()).isCloseTo(dip, NEARLY);
            assertThat(figure(PlanEvent.DIP)).isCloseTo(dip, NEARLY);
        }

        @Test
        void thatStateNoInrushAreSaidToBeInNoPeak() {
            statesInrush = false;

            Trace trace = play(mains(10, 0, "supply"), mains(11, 100, "supply"));

            assertThat(rules(trace)).contains("NOTE transformer-inrush");
        }

        /** 70 % is where charge is lost: at 69.9 it draws anew, at 70 it does not. */
        @Test
        void drawItAfterASagBelowTheVoltageAtWhichChargeIsLost() {
            assertThat(inrush(play(mains(10, 69.9, "supply"), mains(10.5, 100, "supply"))))
                    .anyMatch(each -> each.contains("transformer T is energised"));
            assertThat(inrush(play(mains(10, 70, "supply"), mains(10.5, 100, "supply"))))
                    .isEmpty();
        }

        /** Line A open: a and c are half of what is between B and C, b is what it was. */
        @Test
        void thatLoseALineHalveTwoPhases() {
            Trace trace = play(mains(10, 0, "T", Phase.A), mains(11, 100, "T", Phase.A));

            assertThat(inrush(trace))
                    .containsExactly(
                            "11.0 1 load draws its inrush anew, 1 of them switched",
                            "11.0 transformer T is energised and draws up to 100.0 A");
        }

        private double figure(PlanEvent event) {
            return plant().eventPeaks().get(0).stream()
                    .filter(each -> each.event() == event)
                    .findFirst()
                    .orElseThrow()
                    .peakInrushAmps();
        }
    }

    @Nested
    class ATrip {
        @Test
        void ofAFeederIsNotUndoneByTheMains() {
            Trace trace = play(at(10, Happening.TRIP).atNode("P2"), mains(11, 100, "P2"));

            assertThat(drawn(trace, 10, "M", Phase.A)).isZero();
            assertThat(inrush(trace)).isEmpty();
        }

        @Test
        void ofAFeederEndsWhereItIsReset() {
            Trace trace = play(
                    at(10, Happening.TRIP).atNode("P2"), at(60, Happening.RESET).atNode("P2"));

            assertThat(drawn(trace, 60, "supply", Phase.A)).isCloseTo(AMP_ANEW + K_3 * DSP_IN_USE, NEARLY);
        }

        @Test
        void ofALoadTakesThatAlone() {
            Trace trace = play(
                    at(10, Happening.TRIP).withLoad("dsp"),
                    at(60, Happening.RESET).withLoad("dsp"));

            assertThat(drawn(trace, 10, "P1", Phase.A)).isZero();
            assertThat(drawn(trace, 60, "P1", Phase.A)).isCloseTo(DSP_ANEW, NEARLY);
            assertThat(moves(trace)).isEqualTo(ON);
            assertThat(trace.shown()).isEqualTo(Display.UP); // nobody tells the control
        }
    }

    @Nested
    class ATransfer {
        /** Amp and ctl are dead from 10 to 13 s, then both draw anew from GEN. */
        @Test
        void leavesAllBelowDeadForItsTimeAndThenConnectsItAtOnce() {
            Trace trace = play(at(10, Happening.TRANSFER).atNode("M"));

            assertThat(drawn(trace, 10, "P2", Phase.A)).isZero();
            assertThat(drawn(trace, 13, "P2", Phase.A)).isCloseTo(AMP_ANEW, NEARLY);
            assertThat(drawn(trace, 13, "GEN", Phase.A)).isCloseTo(AMP_ANEW, NEARLY);
            assertThat(drawn(trace, 10, "supply", Phase.A)).isCloseTo(K_3 * DSP_IN_USE, NEARLY);
            assertThat(peak(trace, 2, "GEN").boundAmps()).isCloseTo(AMP_ANEW, NEARLY);
        }

        @Test
        void goesBackToWhatFeedsItAsUsual() {
            Trace trace = play(
                    at(10, Happening.TRANSFER).atNode("M"),
                    at(60, Happening.TRANSFER_BACK).atNode("M"));

            assertThat(drawn(trace, 60, "GEN", Phase.A)).isZero();
            assertThat(drawn(trace, 63, "supply", Phase.A)).isCloseTo(AMP_ANEW + K_3 * DSP_IN_USE, NEARLY);
        }

        /** 20 ms is what loads go on without voltage. */
        @Test
        void thatIsQuickEnoughIsRiddenThroughWithoutInrush() {
            transferSeconds = 0.020;
            assertThat(inrush(play(at(10, Happening.TRANSFER).atNode("M")))).isEmpty();

            transferSeconds = 0.021;
            assertThat(inrush(play(at(10, Happening.TRANSFER).atNode("M"))))
                    .containsExactly("10.021 2 loads draw their inrush anew, 1 of them switched");
        }

        @Test
        void toADeadSourceLeavesItDead() {
            Trace trace = play(mains(5, 0, "GEN"), at(10, Happening.TRANSFER).atNode("M"), mains(30, 100, "GEN"));

            assertThat(drawn(trace, 30, "GEN", Phase.A)).isCloseTo(AMP_ANEW, NEARLY);
            assertThat(trace.readings())
                    .filteredOn(each -> each.node().equals("GEN") && each.atSeconds() < 30)
                    .allMatch(each -> each.drawnAmps() == 0);
        }
    }

    @Nested
    class FeedOfABoard {
        @Test
        void thatIsALoadIsLostWithItsBreaker() {
            fedBy = Optional.of("ctl");

            Trace trace = play(
                    at(10, Happening.TRIP).withLoad("ctl"),
                    at(20, Happening.RESET).withLoad("ctl"));

            assertThat(moves(trace)).isEqualTo(onThen("12.0 -dsp", "12.0 -amp", "25.0 +dsp", "26.0 +amp"));
        }

        @Test
        void thatIsALoadIsKeptWhereItIsBackInTime() {
            fedBy = Optional.of("ctl");

            Trace trace = play(
                    at(10, Happening.TRIP).withLoad("ctl"),
                    at(12, Happening.RESET).withLoad("ctl"));

            assertThat(moves(trace)).isEqualTo(ON);
        }

        @Test
        void thatIsAnotherPanelIsLostWithIt() {
            fedBy = Optional.of("P2");

            assertThat(moves(play(mains(10, 0, "P1")))).isEqualTo(ON);
            assertThat(moves(play(mains(10, 0, "P2")))).isEqualTo(onThen("12.0 -dsp", "12.0 -amp"));
        }
    }

    @Nested
    class ALostNeutral {
        /** In use amp draws 20 A on A, ctl 1 A on B of 240 V: 207.846·2 V divide as 1 to 20: 19.8 V and 395.9 V. */
        @Test
        void isToldByPhaseWithTheLoadsThatItEndangers() {
            Trace trace = play(at(10, Happening.NEUTRAL_LOST).atNode("M"));

            assertThat(trace.findings())
                    .filteredOn(each -> each.rule().equals("neutral-lost"))
                    .singleElement()
                    .satisfies(each -> {
                        assertThat(each.grade()).isEqualTo(EventFinding.Grade.BROKEN);
                        assertThat(each.text())
                                .contains("A 19.8 V (8 %), B 395.9 V (165 %) of 240 V")
                                .contains("may come to 416 V")
                                .contains("over what it stands, in use or idling: ctl (1 by the usual 110 %");
                    });
            assertThat(moves(trace)).isEqualTo(ON);
        }

        /** Off, dsp leaves fan alone on T: what is on a phase by itself has nothing to return through. */
        @Test
        void countsWhatIsOnAlone() {
            Trace trace = play(
                    at(10, Happening.SYSTEM_OFF), at(60, Happening.NEUTRAL_LOST).atNode("T"));

            assertThat(trace.findings())
                    .anyMatch(each ->
                            each.rule().equals("neutral-lost") && each.text().contains("B 0 V (0 %)"));
        }
    }
}
