package evenrise.solver.intake;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.PhaseSystem;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ConnectionTest {
    private static Connection at(double phaseVolts, String text) {
        return Connection.of(text, "v", PhaseSystem.THREE_PHASE, phaseVolts);
    }

    @Nested
    class OnThreePhases {
        @ParameterizedTest(name = "{1} on {0} V: {2} poles")
        @CsvSource({
            // to neutral
            "120, 120, 1",
            "120, 115 V, 1",
            "120, 120V/60Hz, 1",
            "120, 100-240, 1",
            "120, 100-240 V AC 50/60 Hz, 1",
            "120, 1~ 120, 1",
            "127, 110-130, 1",
            "230, 230/50Hz, 1",
            "230, 240 V, 1",
            "230, 220-240 V, 1",
            "230, '0,23 kV', 1",
            "277, 277 V, 1",
            "277, 100-277, 1",
            // between two lines: two wires are two poles, whatever the voltage
            "120, 208, 2",
            "120, 208 V 1ph, 2",
            "120, 208-240, 2",
            "120, 200-240 V, 2",
            "120, 208/240, 2",
            "230, 400, 2",
            "230, 380 V, 2",
            "230, 400 V 1~, 2",
            "277, 480, 2",
            "277, 460 V, 2",
            // three phases, said or by a star's pair
            "120, 3~ 208, 3",
            "120, 208V 3ph, 3",
            "120, 208 V three-phase, 3",
            "120, 3x208, 3",
            "120, 208Y/120, 3",
            "120, 120/208, 3",
            "120, 3~, 3",
            "230, 3~ 400, 3",
            "230, 3/N/PE 400 V, 3",
            "230, 400 V 3N~, 3",
            "230, Drehstrom 400 V, 3",
            "230, 400 V triphasé, 3",
            "230, 400 V trifásico, 3",
            "230, 230/400, 3",
            "230, 3~ 380-415 V, 3",
            "277, 480Y/277, 3",
            "277, 277/480, 3",
            "277, 3~ 480, 3",
            // as American lists write phases and frequency
            "120, 120/1/60, 1",
            "120, 208/1/60, 2",
            "120, 208/3/60, 3",
            "120, 208-3-60, 3",
            "120, 208V/3PH/60HZ, 3",
            "120, 208Y/120/3/60, 3",
            "277, 480/3/60, 3",
            "120, 208V 1Ø, 2",
            "120, 208V 3Ø, 3",
            "120, 208V 2P, 2",
            "120, '208Y/120V 3PH, 4W', 3",
            "120, 208Y/120V 3PH 4W+GND, 3",
            "120, TBC, 1"
        })
        void areTold(double phaseVolts, String text, int poles) {
            Connection connection = at(phaseVolts, text);

            assertThat(connection.problem()).isEmpty();
            assertThat(connection.question()).isEmpty();
            assertThat(connection.poles()).isEqualTo(poles);
        }

        @ParameterizedTest(name = "{1} on {0} V")
        @CsvSource({
            "277, 230", // 20.4 % more
            "277, 240", // 15.4 %
            "277, 100-240", // 15.4 %
            "277, 120",
            "277, 208",
            "127, 100", // 27 %
            "127, 100-110", // 15.5 %
            "120, 100", // 20 %
            "120, 240", // 208 V: 13.4 % less
            "120, 277",
            "120, 480",
            "120, 3~ 480",
            "120, 3~ 400",
            "230, 120",
            "230, 208", // 10.6 % more
            "230, 3~ 230",
            "230, 480",
            "120, 48 VDC",
            "120, 24V DC"
        })
        void areRefusedToGearOfAnotherVoltage(double phaseVolts, String text) {
            assertThat(at(phaseVolts, text).poles()).isZero();
            assertThat(at(phaseVolts, text).problem()).contains("'" + text + "'");
        }

        @ParameterizedTest(name = "{1} on {0} V: {2} poles, {3} %")
        @CsvSource({
            "120, 230, 2, 9.6 % less", // 207.85 / 230
            "120, 110, 1, 9.1 % more", // 120 / 110
            "127, 120, 1, 5.8 % more", // 127 / 120
            "277, 440, 2, 9.0 % more" // 479.8 / 440
        })
        void areAskedAboutWhereGearIsNearlyForThem(double phaseVolts, String text, int poles, String stray) {
            assertThat(at(phaseVolts, text).poles()).isEqualTo(poles);
            assertThat(at(phaseVolts, text).question()).contains("'" + text + "'", stray);
        }

        @Test
        void sayWhatWasTakenForGranted() {
            assertThat(at(120, "").assumed()).contains("one pole");
            assertThat(at(277, "480").assumed()).contains("two poles", "3~");
            assertThat(at(120, "120/208").assumed()).contains("three poles");
            assertThat(at(120, "208").assumed()).isEmpty();
            assertThat(at(120, "208-240").assumed()).contains("208-240", "two poles");
            assertThat(at(277, "3~ 480").assumed()).isEmpty();
        }
    }

    @Test
    void otherSystemsHaveNoThreePhases() {
        assertThat(Connection.of("240", "v", PhaseSystem.SPLIT_PHASE, 120).poles())
                .isEqualTo(2);
        assertThat(Connection.of("120", "v", PhaseSystem.SPLIT_PHASE, 120).poles())
                .isEqualTo(1);
        assertThat(Connection.of("3~ 240", "v", PhaseSystem.SPLIT_PHASE, 120).problem())
                .contains("three phases");
        assertThat(Connection.of("230", "v", PhaseSystem.SINGLE_PHASE, 230).poles())
                .isEqualTo(1);
        assertThat(Connection.of("400", "v", PhaseSystem.SINGLE_PHASE, 230).poles())
                .isZero();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"1.2.3-240", "abc", "120 or so", "0", "-120", "1e3", "12,0,0", "=1+1", "--240-", "3~ 1~ 208", "٣"
            })
    void garbageIsAProblem(String text) {
        assertThat(at(120, text).poles()).isZero();
        assertThat(at(120, text).problem()).contains(text);
    }

    /** Whatever a cell holds, there is an answer. */
    @Test
    void anythingHasAnAnswer() {
        Random random = new Random(7);
        String alphabet = "0123456789.,-/~vVyYkKacdhzpHPN×x 3n\u202e\u00b1+(";
        for (int i = 0; i < 20_000; i++) {
            StringBuilder text = new StringBuilder();
            for (int k = random.nextInt(12); k >= 0; k--) {
                text.append(alphabet.charAt(random.nextInt(alphabet.length())));
            }
            for (double volts : new double[] {120, 230, 277}) {
                Connection connection = at(volts, text.toString());
                assertThat(connection.poles() == 0)
                        .isEqualTo(!connection.problem().isEmpty());
            }
        }
    }
}
