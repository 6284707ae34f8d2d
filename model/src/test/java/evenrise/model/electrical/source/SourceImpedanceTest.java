package evenrise.model.electrical.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.electrical.Impedance;
import evenrise.model.project.PhaseSystem;
import java.util.Optional;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SourceImpedanceTest {
    private static final Offset<Double> EXACTLY = within(1e-9);

    /** 75 kVA, 4 %, 208Y/120 V: Z = 0.04·3·120²/75,000 = 0.02304 Ω, of which with X/R = 0.75 0.018432 and 0.013824. */
    @Test
    void ofAThreePhaseTransformerIsTheTextbooks() {
        Impedance z = SourceImpedance.ofPercent(PhaseSystem.THREE_PHASE, 120, 75, 4, 0.75);

        assertThat(z.magnitudeOhms()).isCloseTo(0.02304, EXACTLY);
        assertThat(z.resistanceOhms()).isCloseTo(0.018432, EXACTLY);
        assertThat(z.reactanceOhms()).isCloseTo(0.013824, EXACTLY);
    }

    /** 25 kVA, 2 %, 120/240 V: between the lines 0.02·240²/25,000 = 0.04608 Ω, a leg a third of that; single at 120 V 0.01152. */
    @Test
    void ofOnePhaseGoesByTheVoltageBetweenItsLines() {
        assertThat(SourceImpedance.ofPercent(PhaseSystem.SPLIT_PHASE, 120, 25, 2, 1)
                        .magnitudeOhms())
                .isCloseTo(0.01536, EXACTLY);
        assertThat(SourceImpedance.ofPercent(PhaseSystem.SINGLE_PHASE, 120, 25, 2, 1)
                        .magnitudeOhms())
                .isCloseTo(0.01152, EXACTLY);
    }

    /** Ohm's law: 120 V over 12 kA is 0.01 Ω; 240 V over 12 kA between the lines 0.02 Ω, a leg a third of that. */
    @Test
    void ofAFaultCurrentIsVoltageOverCurrent() {
        Impedance z = SourceImpedance.ofFault(PhaseSystem.THREE_PHASE, 120, 12_000, 0.75);

        assertThat(z.resistanceOhms()).isCloseTo(0.008, EXACTLY);
        assertThat(z.reactanceOhms()).isCloseTo(0.006, EXACTLY);
        assertThat(SourceImpedance.ofFault(PhaseSystem.SPLIT_PHASE, 120, 12_000, 1)
                        .magnitudeOhms())
                .isCloseTo(0.02 / 3, EXACTLY);
    }

    /** A linear dip of 75 %: at most 75/√(1 + 0.75²) = 60 %; as a divider 75/1.75 = 42.857 %. */
    @Test
    void dipsOfImpedancesAreLessThanLinear() {
        assertThat(StepDip.mostPercent(75)).isCloseTo(60, EXACTLY);
        assertThat(StepDip.dividedPercent(75)).isCloseTo(42.857142857, EXACTLY);
    }

    /** 1.1 times 230 V behind |3 + 4j| mΩ: 253 V/5 mΩ = 50.6 kA. */
    @Test
    void letsAFaultFlow() {
        assertThat(FaultCurrent.amps(FaultCurrent.GREATEST_VOLTAGE_FACTOR, 230, new Impedance(0.003, 0.004)))
                .isCloseTo(50_600, within(1e-6));
    }

    /** Nothing drawn, nothing flows; a crest of 100 A at 170 V stands for 1.7 Ω. */
    @Test
    void lessensACrest() {
        assertThat(SharedSource.crestAmps(0, 170, new Impedance(1, 1))).isZero();
        // 170/|1.7 + 1.3 + 4j| = 170/5
        assertThat(SharedSource.crestAmps(100, 170, new Impedance(1.3, 4))).isCloseTo(34, EXACTLY);
    }

    /** The curves by their steps; a dip of so many percent that lasts so long. */
    @Nested
    class Tolerances {
        private static DipCourse flat(double percent, double seconds) {
            return new DipCourse(dying -> dying <= 0 ? percent : 0, seconds, 1e-4);
        }

        @ParameterizedTest
        @CsvSource({
            "9.9, 60, 0", // within 10 % steadily
            "15, 9.9, 0", // 80 % for 10 s
            "15, 10.1, 10",
            "25, 0.49, 0", // 70 % for 0.5 s
            "25, 0.51, 20",
            "35, 0.019, 0", // nothing for 20 ms
            "35, 0.021, 30"
        })
        void areThoseOfTheItiCurve(double percent, double seconds, double left) {
            assertThat(Tolerance.ITI.left(flat(percent, seconds)).map(Tolerance.Band::percent))
                    .isEqualTo(left == 0 ? Optional.empty() : Optional.of(left));
        }

        @ParameterizedTest
        @CsvSource({
            "55, 0.001, 50",
            "45, 0.19, 0",
            "45, 0.21, 30",
            "25, 0.49, 0",
            "25, 0.51, 20",
            "15, 0.99, 0",
            "15, 1.01, 10"
        })
        void areThoseOfSemi(double percent, double seconds, double left) {
            assertThat(Tolerance.SEMI_F47.left(flat(percent, seconds)).map(Tolerance.Band::percent))
                    .isEqualTo(left == 0 ? Optional.empty() : Optional.of(left));
        }

        @Test
        void endWithWhatMayStay() {
            assertThat(Tolerance.ITI.leastPercent()).isEqualTo(10);
            assertThat(Tolerance.ITI_SWELL.leastPercent()).isEqualTo(10);
        }
    }
}
