package evenrise.model.electrical;

import static evenrise.model.Fixtures.aLoad;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** 10 A that stay, 80 A on top that halve every 0.5 s, closing within 0.1 s; nominally on at 3 s. */
class InrushEnvelopeTest {
    private static final Offset<Double> EXACTLY = within(1e-12);

    private final InrushEnvelope envelope = new InrushEnvelope(10, 80, 0.5, 0.1);

    @Nested
    class OverTime {
        @Test
        void drawsNothingBeforeTheEarliestClosing() {
            assertThat(envelope.amps(3, 2.899999)).isZero();
        }

        @Test
        void drawsAllFromTheEarliestToTheLatestClosing() {
            assertThat(envelope.amps(3, 2.9)).isEqualTo(90);
            assertThat(envelope.amps(3, 3)).isEqualTo(90);
            assertThat(envelope.amps(3, 3.1)).isCloseTo(90, EXACTLY);
        }

        @Test
        void halvesTheExcessInEveryHalfLifeAfterTheLatestClosing() {
            assertThat(envelope.amps(3, 3.6)).isCloseTo(10 + 40, EXACTLY);
            assertThat(envelope.amps(3, 4.1)).isCloseTo(10 + 20, EXACTLY);
        }

        @Test
        void endsAtTheBase() {
            assertThat(envelope.amps(3, 100)).isCloseTo(10, EXACTLY);
        }

        @Test
        void boundsEveryRealClosingWithinTheTolerance() {
            InrushEnvelope sharp = new InrushEnvelope(10, 80, 0.5, 0);

            for (double closing = 2.9; closing <= 3.1; closing += 0.01) {
                for (double at = 2.8; at < 5; at += 0.013) {
                    assertThat(envelope.amps(3, at)).isGreaterThanOrEqualTo(sharp.amps(closing, at) - 1e-12);
                }
            }
        }
    }

    @Nested
    class OfALoad {
        @Test
        void takesTheBaseFromTheIdleCurrentAsAPeakValue() {
            InrushEnvelope of = InrushEnvelope.of(
                    aLoad().idleAmps(2).inrushPeakAmps(30).inrushHalfMillis(250).build(), 0.05);

            // √2·2 A = 2.828 A; 30 − 2.828 = 27.172 A
            assertThat(of.baseAmps()).isCloseTo(2.8284271247, within(1e-9));
            assertThat(of.excessAmps()).isCloseTo(27.1715728753, within(1e-9));
            assertThat(of.halfLifeSeconds()).isEqualTo(0.25);
            assertThat(of.toleranceSeconds()).isEqualTo(0.05);
        }

        @Test
        void hasNoExcessWherePeakIsBelowTheBase() {
            InrushEnvelope of =
                    InrushEnvelope.of(aLoad().idleAmps(10).inrushPeakAmps(14).build(), 0);

            // √2·10 A is more than 14 A
            assertThat(of.excessAmps()).isZero();
        }

        @Test
        void takesTheRunningCurrentWhereNoIdleCurrentIsGiven() {
            InrushEnvelope of = InrushEnvelope.of(aLoad().runningAmps(10).build(), 0);

            assertThat(of.baseAmps()).isCloseTo(14.1421356237, within(1e-9));
            assertThat(of.excessAmps()).isZero();
        }
    }

    @Nested
    class OverVoltages {
        private final VoltageBand tenPercent = new VoltageBand(0.9, 1.1);

        /** 10 A idle, 80 A at switch-on: excess 80 − 14.1421 = 65.8579, times 1.1 is 72.4436; base 14.1421/0.9 = 15.7135. */
        @Test
        void takesTheExcessAtTheHighestAndTheBaseAtTheLowestVoltage() {
            InrushEnvelope of = InrushEnvelope.within(
                    aLoad().idleAmps(10).inrushPeakAmps(80).thirdHarmonic(0).build(), 0, tenPercent);

            assertThat(of.excessAmps()).isCloseTo(72.4436, within(1e-4));
            assertThat(of.baseAmps()).isCloseTo(15.7135, within(1e-4));
        }

        /** 4 A idle, 80 A at switch-on, r = 0.4, ±10 %: (80 − 5.6569)·1.1 + 4·1.8383/0.9 = 81.777 + 8.170 = 89.95 A. */
        @Test
        void takesTheCrestOfTheStatedThirdHarmonic() {
            InrushEnvelope of = InrushEnvelope.within(
                    aLoad().idleAmps(4).inrushPeakAmps(80).thirdHarmonic(0.4).build(), 0, tenPercent);

            assertThat(of.baseAmps() + of.excessAmps()).isCloseTo(89.95, within(0.005));
        }

        @Test
        void takesTheStatedCrestFactorBeforeThat() {
            InrushEnvelope of = InrushEnvelope.within(
                    aLoad().idleAmps(4).thirdHarmonic(0.4).crestFactor(3).build(), 0, VoltageBand.NOMINAL);

            assertThat(of.baseAmps()).isCloseTo(12, EXACTLY);
        }

        /** A flat-topped idle current of 10 A: 80 A at switch-on are 88 A at 110 %, whatever the base is. */
        @Test
        void keepsThePeakOfALowCrest() {
            InrushEnvelope of = InrushEnvelope.within(
                    aLoad().idleAmps(10).inrushPeakAmps(80).crestFactor(1).build(), 0, tenPercent);

            assertThat(of.baseAmps() + of.excessAmps()).isGreaterThanOrEqualTo(88);
        }

        /** 94 to 110 %: an impedance of 10 A rms draws 1.1 times its 14.142 A, more than 14.142/0.94. */
        @Test
        void takesTheBaseOfAnImpedanceWhereThatIsLarger() {
            InrushEnvelope of =
                    InrushEnvelope.within(aLoad().idleAmps(10).thirdHarmonic(0).build(), 0, new VoltageBand(0.94, 1.1));

            assertThat(of.baseAmps()).isCloseTo(15.5563, within(1e-4));
        }

        @Test
        void isTheNominalEnvelopeForASineAtNominalVoltage() {
            assertThat(InrushEnvelope.within(
                            aLoad().idleAmps(2).inrushPeakAmps(30).build(), 0.05, VoltageBand.NOMINAL))
                    .isEqualTo(InrushEnvelope.of(
                            aLoad().idleAmps(2).inrushPeakAmps(30).build(), 0.05));
        }
    }

    /** 10 A that stay and 80 A on top that halve every 0.5 s. */
    @Nested
    class InPart {
        @Test
        void isInProportion() {
            InrushEnvelope fourfold = envelope.times(4);

            assertThat(fourfold.baseAmps()).isEqualTo(40);
            assertThat(fourfold.excessAmps()).isEqualTo(320);
            assertThat(fourfold.halfLifeSeconds()).isEqualTo(0.5);
        }

        @Test
        void isTheExcessWithoutWhatStays() {
            assertThat(envelope.excessAlone().amps(3, 3)).isEqualTo(80);
            assertThat(envelope.excessAlone().amps(3, 100)).isCloseTo(0, EXACTLY);
        }

        @Test
        void isLeftOfTheExcessAfterAKnownClosing() {
            assertThat(envelope.excessLeftAmps(0)).isEqualTo(80);
            assertThat(envelope.excessLeftAmps(1)).isCloseTo(20, EXACTLY);
        }
    }
}
