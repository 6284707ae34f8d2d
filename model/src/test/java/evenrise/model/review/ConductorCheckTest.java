package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.LoadBuilder;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.project.Electrical;
import evenrise.model.project.Feeder;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class ConductorCheckTest {
    private static Reviews branch(Electrical electrical, LoadBuilder load) {
        return Reviews.of(
                new ConductorCheck(),
                aProject().electrical(electrical).loads(load.unswitched()).build(),
                aPlan().build());
    }

    private static List<Remark> broken(Reviews reviews) {
        return reviews.remarks().stream()
                .filter(remark -> remark.grade() == Grade.BREAKS)
                .toList();
    }

    @Nested
    class BranchByNec {
        @Test
        void keepsTheSmallConductorRule() {
            LoadBuilder kept =
                    aLoad("L1").runningAmps(12).breakerAmps(20).circuit(Cabling.circuit(Cabling.cable("12 AWG", 30)));
            LoadBuilder over =
                    aLoad("L1").runningAmps(12).breakerAmps(25).circuit(Cabling.circuit(Cabling.cable("12 AWG", 30)));

            assertThat(broken(branch(Cabling.NEC, kept))).isEmpty();
            assertThat(broken(branch(Cabling.NEC, over))).singleElement().satisfies(remark -> {
                assertThat(remark.clause()).isEqualTo("NEC 240.4(D)");
                assertThat(remark.message()).contains("12 AWG", "25.00 A", "20.00 A");
            });
        }

        @Test
        void holdsAQuarterMoreAgainstTheTableAlone() {
            LoadBuilder kept =
                    aLoad("L1").runningAmps(32).breakerAmps(40).circuit(Cabling.circuit(Cabling.cable("8 AWG", 30)));
            LoadBuilder over =
                    aLoad("L1").runningAmps(32.1).breakerAmps(40).circuit(Cabling.circuit(Cabling.cable("8 AWG", 30)));

            // 40 A in the 60 °C column
            assertThat(broken(branch(Cabling.NEC, kept))).isEmpty();
            assertThat(broken(branch(Cabling.NEC, over)))
                    .singleElement()
                    .satisfies(remark -> assertThat(remark.message()).contains("40.13 A", "40.00 A"));
        }

        @Test
        void derateWhatRunsTogether() {
            Reviews reviews = branch(
                    Cabling.NEC,
                    aLoad("L1")
                            .runningAmps(30)
                            .breakerAmps(40)
                            .circuit(Cabling.circuit(
                                    Cabling.cable("8 AWG", 30, OptionalDouble.of(75), OptionalInt.of(9)))));

            // 50 A · 0.70 = 35 A; the next standard rating above is 35 A
            assertThat(reviews.figure("L1", "ampacity")).isCloseTo(35, within(1e-9));
            assertThat(broken(reviews))
                    .singleElement()
                    .extracting(Remark::clause)
                    .isEqualTo("NEC 240.4(B)");
        }

        @Test
        void showsItsArithmetic() {
            Reviews reviews = branch(
                    Cabling.NEC,
                    aLoad("L1")
                            .runningAmps(36)
                            .breakerAmps(40)
                            .circuit(Cabling.circuit(
                                    Cabling.cable("8 AWG", 30, OptionalDouble.of(75), OptionalInt.of(9)))));

            assertThat(broken(reviews))
                    .extracting(Remark::message)
                    .anySatisfy(message -> assertThat(message)
                            .contains("50 A (75 °C column) × 0.7 (9 conductors together) = 35.00 A"));
        }

        /** 4 AWG in the 75 °C column 85 · 0.70 = 59.5 A; 6 AWG 65 · 0.70 = 45.5 A carries 36 A and may have 50 A. */
        @Test
        void proposesTheLeastSizeThatIsEnough() {
            Reviews reviews = branch(
                    Cabling.NEC,
                    aLoad("L1")
                            .runningAmps(36)
                            .breakerAmps(50)
                            .circuit(Cabling.circuit(
                                    Cabling.cable("8 AWG", 30, OptionalDouble.of(75), OptionalInt.of(9)))));

            assertThat(broken(reviews))
                    .extracting(Remark::message)
                    .allSatisfy(message -> assertThat(message).contains("Maybe take 6 AWG"));
        }

        /** 1000 kcmil carries 545 A at 75 °C; 125 % of 640 A are 800 A: two of 600 kcmil (840 A), not of 500 (760 A). */
        @Test
        void proposesSetsWhereNoSizeIsEnough() {
            LoadBuilder large = aLoad("L1")
                    .runningAmps(640)
                    .breakerAmps(800)
                    .circuit(Cabling.circuit(
                            Cabling.cable("1000 kcmil", 30, OptionalDouble.of(75), OptionalInt.empty())));

            assertThat(broken(branch(Cabling.NEC, large)))
                    .extracting(Remark::message)
                    .allSatisfy(message -> assertThat(message).contains("Maybe take 2 × 600 kcmil"));
        }

        @Test
        void showsOneDigitMoreWhereFigureAndLimitLookEqual() {
            LoadBuilder load = aLoad("L1")
                    .runningAmps(32.001)
                    .breakerAmps(45)
                    .circuit(Cabling.circuit(Cabling.cable("8 AWG", 30)));

            // 1.25 · 32.001 = 40.00125 A beside 40 A
            assertThat(broken(branch(Cabling.NEC, load)))
                    .extracting(Remark::message)
                    .anySatisfy(message -> assertThat(message).contains("40.001 A", "40.000 A"));
        }

        @Test
        void correctsFromTheInsulationDownToTheTerminals() {
            LoadBuilder warm = aLoad("L1")
                    .runningAmps(20)
                    .breakerAmps(30)
                    .circuit(Cabling.circuit(
                            Cabling.insulated(Cabling.cable("10 AWG", 30, OptionalDouble.of(75), OptionalInt.of(6)))));
            LoadBuilder alone = aLoad("L1")
                    .runningAmps(20)
                    .breakerAmps(30)
                    .circuit(Cabling.circuit(
                            Cabling.insulated(Cabling.cable("10 AWG", 30, OptionalDouble.of(75), OptionalInt.of(3)))));

            // 40 A in the 90 °C column · 0.80 = 32 A; alone 40 A, of which the 75 °C terminals allow 35 A
            assertThat(branch(Cabling.NEC, warm).figure("L1", "ampacity")).isCloseTo(32, within(1e-9));
            assertThat(branch(Cabling.NEC, alone).figure("L1", "ampacity")).isCloseTo(35, within(1e-9));
        }

        @Test
        void allowsTheNextStandardRatingAboveTheAmpacity() {
            LoadBuilder load = aLoad("L1")
                    .runningAmps(80)
                    .breakerAmps(110)
                    .circuit(Cabling.circuit(Cabling.cable("2 AWG", 30, OptionalDouble.of(60), OptionalInt.empty())));

            // 95 A: 100 A is next, 110 A is one too many
            assertThat(broken(branch(Cabling.NEC, load)))
                    .anySatisfy(remark -> assertThat(remark.clause()).isEqualTo("NEC 240.4(B)"));
            LoadBuilder next = aLoad("L1")
                    .runningAmps(70)
                    .breakerAmps(100)
                    .circuit(Cabling.circuit(Cabling.cable("2 AWG", 30, OptionalDouble.of(60), OptionalInt.empty())));
            assertThat(broken(branch(Cabling.NEC, next))).isEmpty();
        }
    }

    @Nested
    class FeederByIec {
        private Reviews reviewed(double amps, double third, double breakerAmps) {
            return Reviews.of(
                    new ConductorCheck(),
                    aProject()
                            .electrical(Cabling.IEC)
                            .panels(aPanel("P1").feeder(Cabling.feeder(Cabling.cable("16 mm2", 20), breakerAmps)))
                            .loads(
                                    aLoad("L1").unswitched().runningAmps(amps).thirdHarmonic(third),
                                    aLoad("L2").unswitched().runningAmps(amps).thirdHarmonic(third),
                                    aLoad("L3").unswitched().runningAmps(amps).thirdHarmonic(third))
                            .build(),
                    aPlan().assignments(
                                    anAssignment("L1").at("P1", 1),
                                    anAssignment("L2").at("P1", 3),
                                    anAssignment("L3").at("P1", 5))
                            .build());
        }

        @Test
        void keepsTheChainOfLoadBreakerAndCable() {
            // 16 mm² by method B1: 68 A
            assertThat(broken(reviewed(60, 0, 63))).isEmpty();
            assertThat(broken(reviewed(60, 0, 80))).singleElement().satisfies(remark -> {
                assertThat(remark.place()).isEqualTo("P1");
                assertThat(remark.message()).contains("80.00 A", "68.00 A");
            });
        }

        @Test
        void reducesTheCableForThirdHarmonics() {
            // 0.3/√1.09 = 28.7 % of the line current: 68 A · 0.86 = 58.48 A
            assertThat(broken(reviewed(50, 0.3, 58))).isEmpty();
            assertThat(broken(reviewed(59, 0.3, 58)))
                    .anySatisfy(remark -> assertThat(remark.message()).contains("58.48 A", "59.00 A"));
        }

        @Test
        void holdsTheFeederAgainstItsDevice() {
            assertThat(broken(reviewed(40, 0, 40))).isEmpty();
            assertThat(broken(reviewed(40.1, 0, 40))).singleElement().satisfies(remark -> {
                assertThat(remark.place()).isEqualTo("P1");
                assertThat(remark.message()).contains("40.10 A", "40.00 A");
            });
        }

        @Test
        void letsTheNeutralGovernAboveAThird() {
            // 0.5/√1.25 = 44.7 %: neutral 3 · 0.447 · 40 = 53.67 A against 58.48 A; at 45 A 60.37 A
            assertThat(broken(reviewed(40, 0.5, 50))).isEmpty();
            assertThat(broken(reviewed(45, 0.5, 50)))
                    .singleElement()
                    .satisfies(remark -> assertThat(remark.message()).contains("neutral", "60.37 A"));
        }
    }

    @Test
    void saysWhichCablesItLacks() {
        assertThat(branch(Cabling.NEC, aLoad("L1")).remarks())
                .extracting(Remark::message)
                .anySatisfy(message -> assertThat(message).contains("circuit.cable", "'L1'"))
                .anySatisfy(message -> assertThat(message).contains("feeder.cable", "'P1'"));
    }

    @Test
    void saysWhereNoTableStands() {
        LoadBuilder load = aLoad("L1").circuit(Cabling.circuit(Cabling.cable("150 mm2", 10)));

        assertThat(branch(Cabling.IEC, load).remarks())
                .extracting(Remark::message)
                .anySatisfy(message -> assertThat(message).contains("verified table", "'L1'"));
    }

    @Test
    void takesTheFeederDeviceAtThePanelsRatingWhereNoneIsStated() {
        Reviews reviews = Reviews.of(
                new ConductorCheck(),
                aProject()
                        .electrical(Cabling.IEC)
                        .panels(aPanel("P1")
                                .ratedAmps(125)
                                .feeder(Feeder.builder()
                                        .cable(java.util.Optional.of(Cabling.cable("16 mm2", 20)))
                                        .fullyRated(false)
                                        .build()))
                        .loads(aLoad("L1").unswitched())
                        .build(),
                aPlan().assignments(anAssignment("L1").at("P1", 1)).build());

        assertThat(broken(reviews))
                .singleElement()
                .satisfies(remark -> assertThat(remark.message()).contains("125.00 A"));
    }
}
