package evenrise.model.electrical.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.electrical.LineMatrix;
import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.Phasor;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DrawnTest {
    private static final Offset<Double> EXACTLY = within(1e-9);
    private static final LineValues STAR = LineValues.nominal(PhaseSystem.THREE_PHASE, 120);

    private static Drawn drawn(double amps, Phase... phases) {
        return new Drawn("P1", List.of(phases), amps);
    }

    private static void same(LineValues one, LineValues other) {
        for (Phase phase : Phase.values()) {
            assertThat(one.line(phase).real())
                    .as(phase + "")
                    .isCloseTo(other.line(phase).real(), EXACTLY);
            assertThat(one.line(phase).imaginary())
                    .as(phase + "")
                    .isCloseTo(other.line(phase).imaginary(), EXACTLY);
        }
    }

    @Nested
    class Lines {
        @Test
        void ofOnePoleAreInPhaseWithItsVoltage() {
            Phasor b = drawn(12, Phase.B).lines(STAR).b();

            assertThat(b.length()).isCloseTo(12, EXACTLY);
            assertThat(Math.toDegrees(b.angleRadians())).isCloseTo(-120, EXACTLY);
            assertThat(drawn(12, Phase.B).lines(STAR).a()).isEqualTo(Phasor.ZERO);
        }

        /** Between B and C the voltage stands at −90°; the current comes back in C. */
        @Test
        void ofTwoPolesAreInPhaseWithTheVoltageBetween() {
            LineValues lines = drawn(12, Phase.B, Phase.C).lines(STAR);

            assertThat(lines.b().length()).isCloseTo(12, EXACTLY);
            assertThat(Math.toDegrees(lines.b().angleRadians())).isCloseTo(-90, EXACTLY);
            assertThat(lines.c().plus(lines.b()).length()).isCloseTo(0, EXACTLY);
            assertThat(lines.a()).isEqualTo(Phasor.ZERO);
        }

        @Test
        void ofThreePolesAreThoseOfEachPhase() {
            LineValues lines = drawn(12, Phase.values()).lines(STAR);

            assertThat(lines.c().length()).isCloseTo(12, EXACTLY);
            assertThat(Math.toDegrees(lines.c().angleRadians())).isCloseTo(120, EXACTLY);
        }
    }

    @Nested
    class Conductances {
        /** 12 A at 120 V: 0.1 S. Between lines, 12 A at √3·120 V: 0.05774 S. A star of three of 0.1 S without neutral: 2/3 and −1/3. */
        @Test
        void areAmpereOverVolt() {
            LineMatrix one = drawn(12, Phase.B).siemens(STAR);
            LineMatrix two = drawn(12, Phase.A, Phase.C).siemens(STAR);
            LineMatrix three = drawn(12, Phase.values()).siemens(STAR);

            assertThat(one.at(1, 1).real()).isCloseTo(0.1, EXACTLY);
            assertThat(one.at(0, 0)).isEqualTo(Phasor.ZERO);
            assertThat(two.at(0, 0).real()).isCloseTo(0.0577350269, EXACTLY);
            assertThat(two.at(0, 2).real()).isCloseTo(-0.0577350269, EXACTLY);
            assertThat(two.at(1, 1)).isEqualTo(Phasor.ZERO);
            assertThat(three.at(0, 0).real()).isCloseTo(0.2 / 3, EXACTLY);
            assertThat(three.at(0, 1).real()).isCloseTo(-0.1 / 3, EXACTLY);
        }

        /** By Ohm's law they draw at nominal voltage what they stand for. */
        @ParameterizedTest
        @ValueSource(strings = {"A", "C", "AB", "BC", "CA", "ABC"})
        void drawTheirCurrentAtNominalVoltage(String poles) {
            Drawn drawn = drawn(
                    7,
                    poles.chars()
                            .mapToObj(each -> Phase.valueOf(Character.toString(each)))
                            .toArray(Phase[]::new));

            same(drawn.siemens(STAR).times(STAR), drawn.lines(STAR));
        }
    }

    @Nested
    class At {
        @Test
        void namesAPairOfLinesInTheOrderOfThePhases() {
            assertThat(Terminals.lines(Phase.C, Phase.A)).isEqualTo(Terminals.lines(Phase.A, Phase.C));
            assertThat(Terminals.lines(Phase.C, Phase.A).from()).isEqualTo(Phase.A);
            assertThat(Terminals.lines(Phase.C, Phase.A).text()).isEqualTo("between lines A and C");
            assertThat(Terminals.neutral(Phase.B).text()).isEqualTo("phase B");
        }

        @Test
        void areEveryPhaseAndEveryPair() {
            assertThat(Terminals.all(PhaseSystem.THREE_PHASE))
                    .containsExactly(
                            Terminals.neutral(Phase.A),
                            Terminals.neutral(Phase.B),
                            Terminals.neutral(Phase.C),
                            Terminals.lines(Phase.A, Phase.B),
                            Terminals.lines(Phase.A, Phase.C),
                            Terminals.lines(Phase.B, Phase.C));
            assertThat(Terminals.all(PhaseSystem.SINGLE_PHASE)).containsExactly(Terminals.neutral(Phase.A));
        }

        @Test
        void ofALoadAreWhatItsPolesTouch() {
            assertThat(Terminals.of(List.of(Phase.B))).containsExactly(Terminals.neutral(Phase.B));
            assertThat(Terminals.of(List.of(Phase.B, Phase.B))).containsExactly(Terminals.neutral(Phase.B));
            assertThat(Terminals.of(List.of(Phase.C, Phase.A))).containsExactly(Terminals.lines(Phase.A, Phase.C));
            assertThat(Terminals.of(List.of(Phase.values())))
                    .containsExactly(
                            Terminals.lines(Phase.A, Phase.B),
                            Terminals.lines(Phase.A, Phase.C),
                            Terminals.lines(Phase.B, Phase.C));
        }

        /** √3·120 = 207.846 V between lines, 120 V to neutral. */
        @Test
        void haveTheirVoltage() {
            assertThat(Terminals.neutral(Phase.C).volts(STAR).length()).isCloseTo(120, EXACTLY);
            assertThat(Terminals.lines(Phase.A, Phase.C).volts(STAR).length()).isCloseTo(207.8460969, within(1e-6));
        }
    }
}
