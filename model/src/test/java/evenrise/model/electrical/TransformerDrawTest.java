package evenrise.model.electrical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Secondary;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** 480Y/277 V above; what its windings make of currents, from turns and Kirchhoff alone. */
class TransformerDrawTest {
    private static final Offset<Double> NEARLY = within(1e-6);
    private static final double PRIMARY_VOLTS = 480 / Math.sqrt(3);
    private static final List<Phase> ALL = List.of(Phase.values());

    private static TransformerDraw of(
            TransformerConnection connection, PhaseSystem secondary, double volts, int shift, Phase... primary) {
        return TransformerDraw.of(
                Transformer.builder()
                        .connection(connection)
                        .secondary(Secondary.builder()
                                .system(secondary)
                                .lineToNeutralVolts(volts)
                                .build())
                        .shiftDegrees(shift)
                        .primaryPhases(List.of(primary))
                        .build(),
                PhaseSystem.THREE_PHASE,
                PRIMARY_VOLTS);
    }

    private static LineSums load(PhaseSystem system, double amps, double third, Phase... phases) {
        LineSums sums = new LineSums(system);
        sums.add(List.of(phases), amps, Lag.NONE, third);
        return sums;
    }

    private static void draws(LineSums drawn, double a, double b, double c) {
        assertThat(drawn.runningAmps(Phase.A)).isCloseTo(a, NEARLY);
        assertThat(drawn.runningAmps(Phase.B)).isCloseTo(b, NEARLY);
        assertThat(drawn.runningAmps(Phase.C)).isCloseTo(c, NEARLY);
    }

    /** Delta to 208Y/120 V: a winding has 480 to 120 turns, so a current in one leg is a quarter of it in two lines. */
    @Nested
    class DeltaWye {
        private final TransformerDraw ahead = of(TransformerConnection.DELTA_WYE, PhaseSystem.THREE_PHASE, 120, 30);
        private final TransformerDraw behind = of(TransformerConnection.DELTA_WYE, PhaseSystem.THREE_PHASE, 120, -30);

        /** 75 kVA: 208.33 A on the secondary, 90.21 A on the primary, by S over √3·V of each. */
        @Test
        void drawsTheRatioOfABalancedLoad() {
            assertThat(ahead.ratio()).isCloseTo(120 / PRIMARY_VOLTS, NEARLY);
            LineSums drawn = ahead.running(load(PhaseSystem.THREE_PHASE, 208.3333, 0, Phase.values()));

            assertThat(drawn.runningAmps(Phase.A)).isCloseTo(90.21, within(0.005));
            assertThat(drawn.runningAmps(Phase.C)).isCloseTo(90.21, within(0.005));
        }

        @Test
        void drawsOneLegFromTwoLines() {
            draws(ahead.running(load(PhaseSystem.THREE_PHASE, 100, 0, Phase.A)), 25, 25, 0);
            draws(ahead.running(load(PhaseSystem.THREE_PHASE, 100, 0, Phase.C)), 25, 0, 25);
            draws(behind.running(load(PhaseSystem.THREE_PHASE, 100, 0, Phase.A)), 25, 0, 25);
            draws(behind.running(load(PhaseSystem.THREE_PHASE, 100, 0, Phase.B)), 25, 25, 0);
        }

        /** A load between two legs draws from three lines, of one of them double: 25, 25 and 50 A. */
        @Test
        void drawsALoadBetweenLegsFromThreeLines() {
            draws(ahead.running(load(PhaseSystem.THREE_PHASE, 100, 0, Phase.A, Phase.B)), 25, 50, 25);
            draws(behind.running(load(PhaseSystem.THREE_PHASE, 100, 0, Phase.A, Phase.B)), 50, 25, 25);
        }

        /** A balanced load at unity is at unity above, whatever the shift: beside 10 A at unity the lines add as numbers. */
        @Test
        void turnsWithItsShift() {
            for (TransformerDraw each : List.of(ahead, behind)) {
                LineSums drawn = each.running(load(PhaseSystem.THREE_PHASE, 100, 0, Phase.values()));
                drawn.add(load(PhaseSystem.THREE_PHASE, 10, 0, Phase.values()));

                assertThat(drawn.meteredAmps(Phase.B)).isCloseTo(10 + 100 * 120 / PRIMARY_VOLTS, NEARLY);
            }
        }

        /** 13 A with r = 0.75 on A alone: 7.8 A of third harmonic, a quarter in two lines; no credit where legs would cancel. */
        @Test
        void passesThirdHarmonicsOnAsNumbers() {
            LineSums one = ahead.running(load(PhaseSystem.THREE_PHASE, 13, 0.75, Phase.A));
            LineSums three = ahead.running(load(PhaseSystem.THREE_PHASE, 13, 0.75, Phase.values()));

            assertThat(one.thirdAmps(Phase.A)).isCloseTo(1.95, NEARLY);
            assertThat(one.thirdAmps(Phase.C)).isZero();
            assertThat(one.runningAmps(Phase.B)).isCloseTo(3.25, NEARLY);
            assertThat(three.thirdAmps(Phase.A)).isCloseTo(3.9, NEARLY);
        }

        @Test
        void letsItsNeutralReturnNothing() {
            assertThat(ahead.passesNeutralOn()).isFalse();
            assertThat(ahead.returnsByNeutral()).isFalse();
            assertThat(ahead.primaryPhases()).isEqualTo(ALL);
        }

        @Test
        void takesEnvelopesWithoutCreditForAngles() {
            assertThat(ahead.envelope(new double[] {100, 40, 0})).containsExactly(new double[] {25, 35, 10}, NEARLY);
            assertThat(behind.envelope(new double[] {100, 40, 0})).containsExactly(new double[] {35, 10, 25}, NEARLY);
        }
    }

    /** 480Y/277 to 240Y/138.6 V: half the turns, so half the current in each line. */
    @Nested
    class WyeWye {
        private final TransformerDraw half =
                of(TransformerConnection.WYE_WYE, PhaseSystem.THREE_PHASE, PRIMARY_VOLTS / 2, 30);

        @Test
        void drawsEachLegFromItsLine() {
            LineSums drawn = half.running(load(PhaseSystem.THREE_PHASE, 13, 0.75, Phase.B));

            draws(drawn, 0, 6.5, 0);
            assertThat(drawn.thirdAmps(Phase.B)).isCloseTo(3.9, NEARLY);
            assertThat(drawn.meteredAmps(Phase.B)).isCloseTo(6.5, NEARLY);
            assertThat(half.envelope(new double[] {8, 6, 4})).containsExactly(new double[] {4, 3, 2}, NEARLY);
        }

        @Test
        void passesItsNeutralOn() {
            assertThat(half.passesNeutralOn()).isTrue();
            assertThat(half.returnsByNeutral()).isFalse();
            assertThat(half.primaryPhases()).isEqualTo(ALL);
        }
    }

    /** 480 to 120/240 V: a winding of 480 V to one of 120 V, so a quarter of what both legs draw, from two lines. */
    @Nested
    class SingleOnTwoLines {
        private final TransformerDraw split =
                of(TransformerConnection.SINGLE, PhaseSystem.SPLIT_PHASE, 120, 30, Phase.B, Phase.C);

        @Test
        void drawsBothLegsFromBothLines() {
            LineSums fed = load(PhaseSystem.SPLIT_PHASE, 40, 0, Phase.A);
            fed.add(load(PhaseSystem.SPLIT_PHASE, 20, 0, Phase.B));
            LineSums drawn = split.running(fed);

            draws(drawn, 0, 15, 15);
            assertThat(drawn.meteredAmps(Phase.B)).isCloseTo(15, NEARLY);
            assertThat(split.envelope(new double[] {40, 20, 0})).containsExactly(new double[] {0, 15, 15}, NEARLY);
            assertThat(split.ratio()).isCloseTo(0.25, NEARLY);
        }

        /** Its current stands at the voltage between its lines, as a load of 15 A between them: the two add as numbers. */
        @Test
        void drawsAtTheVoltageBetweenItsLines() {
            LineSums drawn = split.running(load(PhaseSystem.SPLIT_PHASE, 60, 0, Phase.A));
            drawn.add(load(PhaseSystem.THREE_PHASE, 10, 0, Phase.B, Phase.C));

            assertThat(drawn.meteredAmps(Phase.B)).isCloseTo(25, NEARLY);
            assertThat(drawn.meteredAmps(Phase.C)).isCloseTo(25, NEARLY);
        }

        @Test
        void addsThirdHarmonicsOfItsLegs() {
            LineSums drawn = split.running(load(PhaseSystem.SPLIT_PHASE, 13, 0.75, Phase.A, Phase.B));

            assertThat(drawn.thirdAmps(Phase.C)).isCloseTo(3.9, NEARLY);
        }

        @Test
        void drawsFromTheFirstTwoLinesUnlessOthersAreStated() {
            assertThat(split.primaryPhases()).containsExactly(Phase.B, Phase.C);
            assertThat(of(TransformerConnection.SINGLE, PhaseSystem.SPLIT_PHASE, 120, 30)
                            .primaryPhases())
                    .containsExactly(Phase.A, Phase.B);
            assertThat(split.returnsByNeutral()).isFalse();
        }
    }

    /** 277 to 120 V from one line: 120/277 of the current, back by the neutral. */
    @Nested
    class SingleOnOneLine {
        private final TransformerDraw one =
                of(TransformerConnection.SINGLE, PhaseSystem.SINGLE_PHASE, 120, 30, Phase.C);

        @Test
        void drawsFromItsLineAtItsVoltage() {
            LineSums drawn = one.running(load(PhaseSystem.SINGLE_PHASE, 100, 0, Phase.A));
            double above = 100 * 120 / PRIMARY_VOLTS;
            draws(drawn, 0, 0, above);
            drawn.add(load(PhaseSystem.THREE_PHASE, 10, 0, Phase.C));

            assertThat(drawn.meteredAmps(Phase.C)).isCloseTo(above + 10, NEARLY);
            assertThat(one.returnsByNeutral()).isTrue();
            assertThat(one.passesNeutralOn()).isFalse();
        }
    }

    /** What it draws by line as phasors; turns and Kirchhoff alone. */
    @Nested
    class Lines {
        private static Phasor entry(TransformerDraw draw, Phase line, Phase leg) {
            return draw.lines().at(line.ordinal(), leg.ordinal());
        }

        private static void is(Phasor phasor, double amps, double degrees) {
            assertThat(phasor.minus(Phasor.polar(amps, Math.toRadians(degrees))).length())
                    .isCloseTo(0, NEARLY);
        }

        /** A winding of 480 V to one of 120 V; leg A ahead of line A by 30° has its winding from A to B. */
        @Test
        void ofADeltaAreAQuarterForthAndBack() {
            TransformerDraw ahead = of(TransformerConnection.DELTA_WYE, PhaseSystem.THREE_PHASE, 120, 30);
            TransformerDraw behind = of(TransformerConnection.DELTA_WYE, PhaseSystem.THREE_PHASE, 120, -30);

            is(entry(ahead, Phase.A, Phase.A), 0.25, 30);
            is(entry(ahead, Phase.B, Phase.A), -0.25, 30);
            is(entry(ahead, Phase.C, Phase.A), 0, 0);
            is(entry(behind, Phase.A, Phase.A), 0.25, -30);
            is(entry(behind, Phase.B, Phase.A), 0, 0);
            is(entry(behind, Phase.C, Phase.A), -0.25, -30);
        }

        @Test
        void ofAStarAreItsRatio() {
            TransformerDraw half = of(TransformerConnection.WYE_WYE, PhaseSystem.THREE_PHASE, PRIMARY_VOLTS / 2, 30);

            is(entry(half, Phase.B, Phase.B), 0.5, 0);
            is(entry(half, Phase.A, Phase.B), 0, 0);
        }

        /** Between B and C the voltage stands at −90°; the second leg is turned round. */
        @Test
        void ofASingleOneStandAtItsWindingsVoltage() {
            TransformerDraw split =
                    of(TransformerConnection.SINGLE, PhaseSystem.SPLIT_PHASE, 120, 30, Phase.B, Phase.C);
            TransformerDraw one = of(TransformerConnection.SINGLE, PhaseSystem.SINGLE_PHASE, 120, 30, Phase.C);

            is(entry(split, Phase.B, Phase.A), 0.25, -90);
            is(entry(split, Phase.C, Phase.A), 0.25, 90);
            is(entry(split, Phase.B, Phase.B), 0.25, 90);
            is(entry(split, Phase.A, Phase.A), 0, 0);
            is(entry(split, Phase.B, Phase.C), 0, 0);
            is(entry(one, Phase.C, Phase.A), 120 / PRIMARY_VOLTS, 120);
            is(entry(one, Phase.C, Phase.B), 0, 0);
            is(entry(one, Phase.A, Phase.A), 0, 0);
        }
    }

    /** A dead primary phase, at earth: what is left of each secondary voltage. */
    @Nested
    class Voltages {
        private static Phasor[] primary(boolean a, boolean b, boolean c) {
            return new Phasor[] {
                a ? new Phasor(1, 0) : Phasor.ZERO,
                b ? Phasor.polar(1, Math.toRadians(-120)) : Phasor.ZERO,
                c ? Phasor.polar(1, Math.toRadians(120)) : Phasor.ZERO
            };
        }

        private static double[] lengths(Phasor[] volts) {
            return new double[] {volts[0].length(), volts[1].length(), volts[2].length()};
        }

        /** Windings A–B, B–C and C–A: with A dead two have 1/√3 of their voltage left. The other way A–C, B–A and C–B. */
        @Test
        void ofADeltaHaveTheRestOfTwoWindings() {
            TransformerDraw ahead = of(TransformerConnection.DELTA_WYE, PhaseSystem.THREE_PHASE, 120, 30);
            TransformerDraw behind = of(TransformerConnection.DELTA_WYE, PhaseSystem.THREE_PHASE, 120, -30);
            double left = 1 / Math.sqrt(3);

            assertThat(lengths(ahead.voltages(primary(true, true, true))))
                    .containsExactly(new double[] {1, 1, 1}, NEARLY);
            assertThat(lengths(ahead.voltages(primary(false, true, true))))
                    .containsExactly(new double[] {left, 1, left}, NEARLY);
            assertThat(lengths(behind.voltages(primary(false, true, true))))
                    .containsExactly(new double[] {left, left, 1}, NEARLY);
            assertThat(ahead.windingPhases(Phase.C)).containsExactly(Phase.C, Phase.A);
            assertThat(behind.windingPhases(Phase.A)).containsExactly(Phase.A, Phase.C);
            assertThat(ahead.isDelta()).isTrue();
        }

        @Test
        void ofAStarAreThoseOfItsLines() {
            TransformerDraw half = of(TransformerConnection.WYE_WYE, PhaseSystem.THREE_PHASE, PRIMARY_VOLTS / 2, 30);

            assertThat(lengths(half.voltages(primary(true, false, true))))
                    .containsExactly(new double[] {1, 0, 1}, NEARLY);
            assertThat(half.windingPhases(Phase.B)).containsExactly(Phase.B);
            assertThat(half.isDelta()).isFalse();
        }

        /** Between two lines of which one is dead, 1/√3 on each leg, the legs opposite; on one line, all or nothing. */
        @Test
        void ofASingleOneAreThoseAcrossItsWinding() {
            TransformerDraw split =
                    of(TransformerConnection.SINGLE, PhaseSystem.SPLIT_PHASE, 120, 30, Phase.B, Phase.C);
            TransformerDraw one = of(TransformerConnection.SINGLE, PhaseSystem.SINGLE_PHASE, 120, 30, Phase.C);
            Phasor[] whole = split.voltages(primary(true, true, true));

            assertThat(lengths(whole)).containsExactly(new double[] {1, 1, 0}, NEARLY);
            assertThat(whole[0].plus(whole[1]).length()).isCloseTo(0, NEARLY);
            assertThat(lengths(split.voltages(primary(true, true, false))))
                    .containsExactly(new double[] {1 / Math.sqrt(3), 1 / Math.sqrt(3), 0}, NEARLY);
            assertThat(lengths(one.voltages(primary(true, true, true))))
                    .containsExactly(new double[] {1, 0, 0}, NEARLY);
            assertThat(lengths(one.voltages(primary(true, true, false))))
                    .containsExactly(new double[] {0, 0, 0}, NEARLY);
            assertThat(split.windingPhases(Phase.A)).containsExactly(Phase.B, Phase.C);
            assertThat(one.isDelta()).isFalse();
        }
    }
}
