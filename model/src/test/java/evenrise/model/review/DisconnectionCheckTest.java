package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.LoadBuilder;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.project.Cable;
import evenrise.model.project.Circuit;
import evenrise.model.project.Device;
import evenrise.model.project.Electrical;
import evenrise.model.project.Feeder;
import evenrise.model.project.InstantaneousRange;
import evenrise.model.project.Practice;
import evenrise.model.project.SupplySource;
import evenrise.model.project.TripCurve;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/**
 * 230 V, 0.35 Ω of loop at the supply, the panel at the supply (a feeder of no length). Resistances by IEC 60228 at 20 °C,
 * times 1.1965 at 70 °C; reactances of 0.08 Ω/km are too small to be seen here.
 */
class DisconnectionCheckTest {
    private static final Cable TWO_AND_A_HALF = protectedBy(Cabling.cable("2.5 mm2", 40), "2.5 mm2");

    private static Cable protectedBy(Cable cable, String size) {
        return cable.withProtectiveSize(Optional.of(size));
    }

    private static Reviews reviewed(
            Practice practice, double volts, SupplySource source, Feeder feeder, LoadBuilder load) {
        return Reviews.of(
                new DisconnectionCheck(),
                aProject()
                        .supply(aSupply().lineToNeutralVolts(volts).frequencyHertz(50))
                        .electrical(Electrical.builder()
                                .practice(practice)
                                .source(source)
                                .build())
                        .panels(aPanel("P1").feeder(feeder))
                        .loads(load.unswitched())
                        .build(),
                aPlan().assignments(anAssignment("L1").at("P1", 1)).build());
    }

    private static SupplySource loop(double ohms) {
        return Sources.utility(10_000).withFaultLoopOhms(OptionalDouble.of(ohms));
    }

    /** Of no length, behind a residual-current device where {@code residual} says so. */
    private static Feeder atSupply() {
        return Cabling.feeder(protectedBy(Cabling.cable("16 mm2", 0), "16 mm2"), 63);
    }

    private static LoadBuilder load(Cable cable, double breakerAmps, TripCurve curve) {
        return aLoad("L1").breakerAmps(breakerAmps).curve(curve).circuit(Cabling.circuit(cable));
    }

    private static Reviews iec(LoadBuilder load) {
        return reviewed(Practice.IEC, 230, loop(0.35), atSupply(), load);
    }

    private static List<Remark> of(Reviews reviews, Grade grade) {
        return reviews.remarks().stream()
                .filter(remark -> remark.grade() == grade && remark.place().equals("L1"))
                .toList();
    }

    @Nested
    class ByIec {
        /** 25 m of 2.5 with 1.5 mm²: 0.025·(7.41 + 12.1)·1.1965 + 0.35 = 0.9336 Ω, 0.95·230/0.9336 = 234.0 A. */
        @Test
        void keepsAFaultThatTripsAtOnce() {
            Reviews reviews = iec(load(protectedBy(Cabling.cable("2.5 mm2", 25), "1.5 mm2"), 32, TripCurve.B));

            assertThat(reviews.figure("L1", "fault loop")).isCloseTo(0.9336, within(1e-3));
            assertThat(reviews.figure("L1", "least fault current to the protective conductor"))
                    .isCloseTo(234.0, within(0.3));
            assertThat(of(reviews, Grade.BREAKS)).isEmpty();
        }

        /** 40 m of 2.5 with 2.5 mm²: 0.5928·1.1965 + 0.35 = 1.0593 Ω, 206.3 A: C16 trips from 160 A, D20 from 400 A. */
        @Test
        void holdsTheLoopAgainstTheUpperEndOfTheBand() {
            assertThat(of(iec(load(TWO_AND_A_HALF, 16, TripCurve.C)), Grade.BREAKS))
                    .isEmpty();
            assertThat(of(iec(load(TWO_AND_A_HALF, 20, TripCurve.C)), Grade.BREAKS))
                    .isEmpty();
            assertThat(of(iec(load(TWO_AND_A_HALF, 20, TripCurve.D)), Grade.BREAKS))
                    .singleElement()
                    .satisfies(remark -> {
                        assertThat(remark.figure().getAsDouble()).isCloseTo(206.3, within(0.3));
                        assertThat(remark.limit()).hasValue(400);
                        assertThat(remark.message()).contains("0.4 s", "20.00 A", "400.00 A", "0.546 Ω", "up to C");
                    });
        }

        /** B32 trips from 160 A: 1.3656 Ω. With 2.5 and 1.5 mm² that is 43.4 m at 0.02334 Ω/m. */
        @Test
        void isExactAtTheLongestLength() {
            assertThat(of(
                            iec(load(protectedBy(Cabling.cable("2.5 mm2", 43.4), "1.5 mm2"), 32, TripCurve.B)),
                            Grade.BREAKS))
                    .isEmpty();
            assertThat(of(
                            iec(load(protectedBy(Cabling.cable("2.5 mm2", 43.6), "1.5 mm2"), 32, TripCurve.B)),
                            Grade.BREAKS))
                    .hasSize(1);
        }

        @Test
        void countsAResidualCurrentDevice() {
            LoadBuilder behind = aLoad("L1")
                    .breakerAmps(20)
                    .curve(TripCurve.D)
                    .circuit(Cabling.circuit(TWO_AND_A_HALF).withResidualCurrentAmps(OptionalDouble.of(0.03)));
            Feeder feeder = atSupply().withResidualCurrentAmps(OptionalDouble.of(0.3));

            assertThat(of(iec(behind), Grade.BREAKS)).isEmpty();
            assertThat(of(
                            reviewed(Practice.IEC, 230, loop(0.35), feeder, load(TWO_AND_A_HALF, 20, TripCurve.D)),
                            Grade.BREAKS))
                    .isEmpty();
        }

        /** 230 V belongs to 0.4 s, 240 V to 0.2 s, 120 V to 0.8 s; a circuit above 63 A to 5 s. */
        @Test
        void namesTheTimeOfTheVoltage() {
            LoadBuilder slow = load(TWO_AND_A_HALF, 20, TripCurve.D);

            assertThat(of(reviewed(Practice.IEC, 240, loop(0.35), atSupply(), slow), Grade.BREAKS))
                    .extracting(Remark::message)
                    .anySatisfy(message -> assertThat(message).contains("0.2 s are not shown"));
            assertThat(of(reviewed(Practice.IEC, 120, loop(0.35), atSupply(), slow), Grade.BREAKS))
                    .extracting(Remark::message)
                    .anySatisfy(message -> assertThat(message).contains("0.8 s are not shown"));
            assertThat(of(iec(load(TWO_AND_A_HALF, 80, TripCurve.C)), Grade.BREAKS))
                    .extracting(Remark::message)
                    .anySatisfy(message -> assertThat(message).contains("5 s are not shown"));
        }

        @Test
        void leavesTheThermalPartOfALargeSettingOpen() {
            Circuit set = Cabling.circuit(TWO_AND_A_HALF).withInstantaneousRatio(OptionalDouble.of(10));
            Reviews reviews = iec(aLoad("L1").breakerAmps(100).circuit(set));

            assertThat(of(reviews, Grade.BREAKS)).isEmpty();
            assertThat(of(reviews, Grade.NOT_CHECKED))
                    .extracting(Remark::message)
                    .anySatisfy(message -> assertThat(message).contains("thermal part"));
        }
    }

    /** 0.35 Ω and 50 m of 16 with 16 mm²: 2·50 m·1.15 Ω/km·1.1965 = 0.1376, 0.4876 Ω; 0.95·230/0.4876 = 448.1 A. */
    @Nested
    class OfAFeeder {
        private Reviews behind(Device device) {
            Feeder feeder = Cabling.feeder(protectedBy(Cabling.cable("16 mm2", 50), "16 mm2"), 40)
                    .withDevice(Optional.of(device));
            return reviewed(Practice.IEC, 230, loop(0.35), feeder, aLoad("L1"));
        }

        private List<Remark> of(Reviews reviews, Grade grade) {
            return reviews.remarks().stream()
                    .filter(remark -> remark.grade() == grade && remark.place().equals("P1"))
                    .toList();
        }

        @Test
        void tripsUpToTheEndOfItsBand() {
            Device c = Device.builder().curve(TripCurve.C).build();
            Device d = Device.builder().curve(TripCurve.D).build();

            // C40 is sure at 400 A, D40 at 800 A
            assertThat(behind(c).figure("P1", "least fault current to the protective conductor"))
                    .isCloseTo(448.1, within(0.5));
            assertThat(of(behind(c), Grade.BREAKS)).isEmpty();
            assertThat(of(behind(d), Grade.BREAKS))
                    .singleElement()
                    .extracting(Remark::message)
                    .asString()
                    .contains("5 s are not shown", "800.00 A");
        }

        @Test
        void leavesTheThermalPartOfARangeOpen() {
            Device range = Device.builder()
                    .instantaneous(InstantaneousRange.builder().low(8).high(12).build())
                    .build();

            assertThat(of(behind(range), Grade.BREAKS)).isEmpty();
            assertThat(of(behind(range), Grade.NOT_CHECKED))
                    .extracting(Remark::message)
                    .anySatisfy(message -> assertThat(message).contains("thermal part", "'P1'"));
        }
    }

    @Nested
    class ByNec {
        private Reviews nec(double setting) {
            Cable cable = protectedBy(Cabling.cable("12 AWG", 45.72), "12 AWG");
            return reviewed(
                    Practice.NEC,
                    120,
                    loop(0.05),
                    Cabling.feeder(protectedBy(Cabling.cable("1/0 AWG", 0), "6 AWG"), 100),
                    aLoad("L1")
                            .breakerAmps(20)
                            .circuit(Cabling.circuit(cable).withInstantaneousRatio(OptionalDouble.of(setting))));
        }

        /** 150 ft there and back of 2.0 + j0.054 Ω/kft, 0.6002 Ω, and 0.05: 114 V/0.6502 Ω = 175.3 A, 8.77 times 20 A. */
        @Test
        void isInformation() {
            assertThat(nec(6).figure("L1", "least fault current to the protective conductor"))
                    .isCloseTo(175.3, within(0.2));
            // 6 · 1.4 = 8.4 times, 7 · 1.4 = 9.8 times
            assertThat(of(nec(6), Grade.NOTE)).isEmpty();
            assertThat(of(nec(7), Grade.NOTE)).singleElement().satisfies(remark -> {
                assertThat(remark.clause()).isEqualTo("NEC 250.4(A)(5)");
                assertThat(remark.message()).contains("175.33 A at least", "196.00 A", "sure by 175.33 A");
            });
            assertThat(of(nec(7), Grade.BREAKS)).isEmpty();
        }
    }

    @Nested
    class SaysThatItLacks {
        private List<String> messages(Reviews reviews) {
            return reviews.remarks().stream()
                    .filter(remark -> remark.grade() == Grade.NOT_CHECKED)
                    .map(Remark::message)
                    .toList();
        }

        @Test
        void theProtectiveConductorOfABranch() {
            assertThat(messages(iec(load(Cabling.cable("2.5 mm2", 10), 16, TripCurve.C))))
                    .anySatisfy(message -> assertThat(message).contains("circuit.cable", "protective_size", "'L1'"));
        }

        @Test
        void theProtectiveConductorOfAFeeder() {
            Feeder bare = Cabling.feeder(Cabling.cable("16 mm2", 10), 63);

            assertThat(messages(reviewed(Practice.IEC, 230, loop(0.35), bare, load(TWO_AND_A_HALF, 16, TripCurve.C))))
                    .anySatisfy(message -> assertThat(message).contains("feeder.cable", "protective_size", "'P1'"));
        }

        @Test
        void theLoopOfAUtility() {
            assertThat(messages(reviewed(
                            Practice.IEC,
                            230,
                            Sources.utility(10_000),
                            atSupply(),
                            load(TWO_AND_A_HALF, 16, TripCurve.C))))
                    .anySatisfy(message -> assertThat(message).contains("electrical.source.fault_loop_ohm"));
        }

        @Test
        void theTripBand() {
            assertThat(messages(iec(aLoad("L1").breakerAmps(16).circuit(Cabling.circuit(TWO_AND_A_HALF)))))
                    .anySatisfy(message -> assertThat(message).contains("curve", "'L1'"));
        }
    }
}
