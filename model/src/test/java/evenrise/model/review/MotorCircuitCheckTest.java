package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.LoadBuilder;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.project.Electrical;
import evenrise.model.project.MotorBuilder;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** 10 hp at 208 V: 30.8 A by table 430.250, so 38.5 A of conductor, 80 A of breaker by the table, 123.2 A at the utmost. */
class MotorCircuitCheckTest {
    private static LoadBuilder tenHorsepower(double breakerAmps) {
        return Motors.threePhase("fan", Motors.horsepower(10)).runningAmps(26).breakerAmps(breakerAmps);
    }

    private static Reviews reviewed(ElectricalCheck check, Electrical electrical, LoadBuilder load) {
        return Reviews.of(check, aProject().electrical(electrical).loads(load).build(), aPlan().build());
    }

    private static List<Remark> said(LoadBuilder load) {
        return said(Cabling.NEC, load);
    }

    private static List<Remark> said(Electrical electrical, LoadBuilder load) {
        return reviewed(new MotorCircuitCheck(), electrical, load).remarks().stream()
                .filter(remark -> remark.grade() != Grade.NOT_CHECKED)
                .toList();
    }

    @Nested
    class Breaker {
        @ParameterizedTest
        @CsvSource({"36", "80"})
        void mayBeWhatTheTableAllows(double amps) {
            assertThat(said(tenHorsepower(amps))).isEmpty();
        }

        @Test
        void isMoreThanTheTableOnlyWhereTheMotorDoesNotStart() {
            assertThat(said(tenHorsepower(90))).singleElement().satisfies(remark -> {
                assertThat(remark.grade()).isEqualTo(Grade.EXCEEDS_RECOMMENDATION);
                assertThat(remark.message()).contains("30.80 A", "90.00 A", "80.00 A", "123.20 A");
            });
        }

        @Test
        void isNeverMoreThanFourTimesTheCurrent() {
            assertThat(said(tenHorsepower(125))).singleElement().satisfies(remark -> {
                assertThat(remark.grade()).isEqualTo(Grade.BREAKS);
                assertThat(remark.limit().getAsDouble()).isCloseTo(123.2, within(1e-9));
            });
        }

        @Test
        void carriesTheMotor() {
            assertThat(said(tenHorsepower(30)))
                    .singleElement()
                    .extracting(Remark::grade)
                    .isEqualTo(Grade.BREAKS);
            // 1.15 · 30.8 A = 35.42 A
            assertThat(said(tenHorsepower(35)))
                    .singleElement()
                    .extracting(Remark::clause)
                    .isEqualTo("NEC 430.110(A) (from memory)");
        }

        @Test
        void isNotHeldAgainstTheRulesOfOtherLoads() {
            // 125 % of 30 A are more than 36 A, but a motor's breaker is not sized so.
            LoadBuilder motor = tenHorsepower(36).runningAmps(30);

            assertThat(reviewed(new BreakerRatingCheck(), Cabling.NEC, motor).remarks().stream()
                            .filter(remark -> remark.grade() == Grade.BREAKS))
                    .isEmpty();
        }
    }

    @Nested
    class Conductor {
        /** 8 AWG carries 40 A in the 60 °C column, 10 AWG 30 A; 38.5 A are needed, and a breaker of 80 A is right. */
        @Test
        void carriesAQuarterMoreThanTheMotor() {
            LoadBuilder kept = tenHorsepower(80).circuit(Cabling.circuit(Cabling.cable("8 AWG", 30)));
            LoadBuilder under = tenHorsepower(80).circuit(Cabling.circuit(Cabling.cable("10 AWG", 30)));

            assertThat(said(kept)).isEmpty();
            assertThat(said(under)).singleElement().satisfies(remark -> {
                assertThat(remark.grade()).isEqualTo(Grade.BREAKS);
                assertThat(remark.clause()).isEqualTo("NEC 430.22");
                assertThat(remark.message()).contains("30.00 A", "38.50 A");
            });
        }

        @Test
        void isLeftToTheMotorsRules() {
            LoadBuilder kept = tenHorsepower(80).circuit(Cabling.circuit(Cabling.cable("8 AWG", 30)));

            assertThat(reviewed(new ConductorCheck(), Cabling.NEC, kept).remarks().stream()
                            .filter(remark -> remark.place().equals("fan")))
                    .isEmpty();
        }

        /** 3 hp, 10.6 A: 13.25 A, a breaker of 30 A on 14 AWG is right; 240.4(D) would allow 15 A. */
        @Test
        void mayBeSmallBehindALargeBreaker() {
            assertThat(said(Motors.threePhase("hoist", Motors.horsepower(3))
                            .runningAmps(9)
                            .breakerAmps(30)
                            .circuit(Cabling.circuit(Cabling.cable("14 AWG", 20)))))
                    .isEmpty();
        }

        /** 6 together: 40 A · 0.8 = 32 A; 125 % count after correction, too. */
        @Test
        void carriesItAfterCorrection() {
            assertThat(said(tenHorsepower(80)
                            .circuit(Cabling.circuit(
                                    Cabling.cable("8 AWG", 30, OptionalDouble.empty(), OptionalInt.of(6))))))
                    .singleElement()
                    .satisfies(remark -> assertThat(remark.message()).contains("32.00 A", "38.50 A"));
        }

        /** Of a hoist by its nameplate alone, 610.14(E): 30 A carry 30 A. */
        @Test
        void ofAHoistCarriesItsNameplate() {
            MotorBuilder hoist = Motors.horsepower(10).hoist(true).nameplateAmps(30);

            assertThat(said(Motors.threePhase("hoist", hoist)
                            .runningAmps(26)
                            .breakerAmps(70)
                            .circuit(Cabling.circuit(Cabling.cable("10 AWG", 30)))))
                    .isEmpty();
        }
    }

    @Nested
    class Overload {
        /** Nameplate of 28 A, service factor 1.15: 35 A, at the utmost 39.2 A; without service factor 32.2 A and 36.4 A. */
        @ParameterizedTest
        @CsvSource({
            "1.15, 35, ",
            "1.15, 35.1, EXCEEDS_RECOMMENDATION",
            "1.15, 39.3, BREAKS",
            "1, 32.2, ",
            "1, 32.3, EXCEEDS_RECOMMENDATION",
            "1, 36.5, BREAKS",
            "1, 27, EXCEEDS_RECOMMENDATION"
        })
        void isSetByTheNameplate(double serviceFactor, double setAmps, Grade grade) {
            MotorBuilder motor = Motors.horsepower(10)
                    .nameplateAmps(28)
                    .serviceFactor(serviceFactor)
                    .overloadAmps(setAmps);

            assertThat(said(Motors.threePhase("fan", motor).runningAmps(26).breakerAmps(80)))
                    .extracting(Remark::grade)
                    .isEqualTo(grade == null ? List.of() : List.of(grade));
        }

        @Test
        void isNamedWhereItIsNotStated() {
            assertThat(reviewed(new MotorCircuitCheck(), Cabling.NEC, tenHorsepower(80))
                            .remarks())
                    .extracting(Remark::message)
                    .anyMatch(message -> message.contains("overload_a"));
        }
    }

    @Nested
    class SeveralBehindOneBreaker {
        /** Four motors of 1 hp, 4.6 A: 1.25 · 4.6 + 3 · 4.6 = 19.55 A; 15 + 3 · 4.6 = 28.8 A of breaker. */
        @Test
        void addUp() {
            LoadBuilder four = Motors.threePhase("hoists", Motors.horsepower(1)).runningAmps(16);

            assertThat(said(four.breakerAmps(25)
                            .circuit(
                                    Cabling.circuit(Cabling.cable("12 AWG", 20)).withDevices(4))))
                    .isEmpty();
            assertThat(said(four.breakerAmps(35)
                            .circuit(
                                    Cabling.circuit(Cabling.cable("14 AWG", 20)).withDevices(4))))
                    .extracting(Remark::clause)
                    .containsExactly("NEC 430.53(C) (from memory)", "NEC 430.24");
        }
    }

    @Nested
    class ByIec {
        /** 2.5 mm² by method B1, three loaded: 21 A (table B.52.4); the overload device protects it at 20 A. */
        @Test
        void goesByTheOverloadDevice() {
            LoadBuilder motor = Motors.threePhase("fan", Motors.horsepower(7.5).overloadAmps(20))
                    .runningAmps(18)
                    .breakerAmps(32)
                    .circuit(Cabling.circuit(Cabling.cable("2.5 mm2", 20)));

            assertThat(said(Cabling.IEC, motor)).isEmpty();
            assertThat(reviewed(new ConductorCheck(), Cabling.IEC, motor).remarks().stream()
                            .filter(remark -> remark.grade() == Grade.BREAKS))
                    .isEmpty();
        }

        @Test
        void breaksAboveTheCableAndBelowTheCurrent() {
            LoadBuilder over = Motors.threePhase("fan", Motors.horsepower(7.5).overloadAmps(22))
                    .runningAmps(18)
                    .breakerAmps(32)
                    .circuit(Cabling.circuit(Cabling.cable("2.5 mm2", 20)));
            LoadBuilder under = Motors.threePhase("fan", Motors.horsepower(7.5).overloadAmps(17))
                    .runningAmps(18)
                    .breakerAmps(32);

            assertThat(said(Cabling.IEC, over))
                    .singleElement()
                    .satisfies(remark -> assertThat(remark.message()).contains("21.00 A", "22.00 A"));
            assertThat(said(Cabling.IEC, under)).extracting(Remark::grade).containsExactly(Grade.BREAKS);
        }

        @Test
        void isHeldByItsBreakerWithoutOne() {
            LoadBuilder motor = Motors.threePhase("fan", Motors.horsepower(7.5))
                    .runningAmps(18)
                    .breakerAmps(32)
                    .circuit(Cabling.circuit(Cabling.cable("2.5 mm2", 20)));

            assertThat(reviewed(new ConductorCheck(), Cabling.IEC, motor).remarks().stream()
                            .filter(remark -> remark.grade() == Grade.BREAKS))
                    .hasSize(1);
            assertThat(reviewed(new MotorCircuitCheck(), Cabling.IEC, motor).remarks())
                    .singleElement()
                    .satisfies(remark -> assertThat(remark.message()).contains("IEC 60947-4-1"));
        }
    }

    @Test
    void saysThatATableIsMissing() {
        LoadBuilder motor = Motors.motor(aLoad("pump"), Motors.horsepower(0.1).build());

        assertThat(reviewed(new MotorCircuitCheck(), Cabling.NEC, motor).remarks())
                .singleElement()
                .satisfies(remark -> assertThat(remark.message()).contains("430.248", "'pump'"));
    }
}
