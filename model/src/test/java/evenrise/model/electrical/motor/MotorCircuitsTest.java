package evenrise.model.electrical.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** NEC article 430 against published worked examples. */
class MotorCircuitsTest {
    @Nested
    class OfOneMotor {
        /** 28 A: an examination page; 22 A: a forum of inspectors; 124 A: the same; the rest by hand, 2.5·FLC, next rating. */
        @ParameterizedTest
        @CsvSource({
            "28, 35, 70",
            "22, 27.5, 60",
            "124, 155, 350",
            "4.6, 5.75, 15",
            "10.6, 13.25, 30",
            "16.7, 20.875, 45",
            "30.8, 38.5, 80",
            "34, 42.5, 90"
        })
        void needsItsConductorAndAllowsItsBreaker(double fullLoad, double conductor, double breaker) {
            assertThat(MotorBranch.conductorAmps(fullLoad)).isCloseTo(conductor, within(1e-9));
            assertThat(MotorBranch.breakerAmps(fullLoad, false)).isEqualTo(breaker);
        }

        @Test
        void allowsAWoundRotorLess() {
            // 1.5 · 40 A = 60 A, a standard rating
            assertThat(MotorBranch.breakerAmps(40, true)).isEqualTo(60);
        }

        @Test
        void allowsFourTimesUpToAHundredAmpereAndThreeTimesAbove() {
            assertThat(MotorBranch.utmostBreakerAmps(30.8, false)).isCloseTo(123.2, within(1e-9));
            assertThat(MotorBranch.utmostBreakerAmps(100, false)).isCloseTo(400, within(1e-9));
            assertThat(MotorBranch.utmostBreakerAmps(124, false)).isCloseTo(372, within(1e-9));
        }

        @Test
        void allowsTheNextStandardRatingWhateverTheUtmost() {
            // 4 · 2.4 A = 9.6 A, but the least standard rating is 15 A
            assertThat(MotorBranch.utmostBreakerAmps(2.4, false)).isEqualTo(15);
        }

        /** Annex D8: nameplates of 32 A and 38 A with service factor 1.15: 40 A and 47.5 A. */
        @Test
        void setsItsOverloadByTheNameplate() {
            assertThat(MotorBranch.overloadAmps(32, 1.15)).isCloseTo(40, within(1e-9));
            assertThat(MotorBranch.overloadAmps(38, 1.15)).isCloseTo(47.5, within(1e-9));
            assertThat(MotorBranch.overloadAmps(32, 1)).isCloseTo(36.8, within(1e-9));
            assertThat(MotorBranch.utmostOverloadAmps(32, 1.15)).isCloseTo(44.8, within(1e-9));
            assertThat(MotorBranch.utmostOverloadAmps(32, 1)).isCloseTo(41.6, within(1e-9));
        }
    }

    @Nested
    class OfAFeeder {
        /** Annex D8 (recalled, arithmetic by hand): 25 hp, 34 A, fuse 110 A; two wound rotors of 30 hp, 40 A, fuse 60 A. */
        @Test
        void isThatOfAnnexD8() {
            MotorFeeder feeder = new MotorFeeder();
            feeder.addMotor(34, 110);
            feeder.addMotor(40, 60);
            feeder.addMotor(40, 60);

            assertThat(feeder.conductorAmps()).isCloseTo(124, within(1e-9));
            assertThat(feeder.deviceAmps()).isCloseTo(190, within(1e-9));
            assertThat(feeder.standardDeviceAmps()).isEqualTo(175);
        }

        /** Two motors of 100 hp, 60 and 7½ hp at 460 V, worked on a forum of inspectors: 367 A, and 562 A so 500 A. */
        @Test
        void isThatOfAWorkedExampleWithFourMotors() {
            MotorFeeder feeder = new MotorFeeder();
            feeder.addMotor(124, 350);
            feeder.addMotor(124, 350);
            feeder.addMotor(77, 200);
            feeder.addMotor(11, 30);

            assertThat(feeder.conductorAmps()).isCloseTo(367, within(1e-9));
            assertThat(feeder.standardDeviceAmps()).isEqualTo(500);
        }

        /** NEC 430.62(A): of two with a largest device of 90 A, 34 A and 30 A, either may be it: 90 + 34 A, in any order. */
        @Test
        void takesTheOtherMotorAsItAllowsMore() {
            for (double[] motors : new double[][] {{34, 30}, {30, 34}}) {
                MotorFeeder feeder = new MotorFeeder();
                feeder.addMotor(motors[0], 90);
                feeder.addMotor(motors[1], 90);

                assertThat(feeder.deviceAmps()).isCloseTo(124, within(1e-9));
            }
        }

        /** NEC 430.24, 215.3, 430.63: 10 A and, running on, 125 % of 40 A beside a motor of 20 A with a device of 50 A. */
        @Test
        void countsOtherLoadsWithTheirAllowance() {
            MotorFeeder feeder = new MotorFeeder();
            feeder.addMotor(20, 50);
            feeder.addOther(10, 10);
            feeder.addOther(40, 50);

            assertThat(feeder.conductorAmps()).isCloseTo(25 + 10 + 50, within(1e-9));
            assertThat(feeder.correctedConductorAmps()).isCloseTo(25 + 10 + 40, within(1e-9));
            assertThat(feeder.ratingAmps()).isCloseTo(20 + 10 + 50, within(1e-9));
            assertThat(feeder.deviceAmps()).isCloseTo(50 + 10 + 50, within(1e-9));
            assertThat(feeder.hasUnknown()).isFalse();
            feeder.addUnknown();
            assertThat(feeder.hasUnknown()).isTrue();
        }

        /** Four motors of 28 A, an examination page: 35 + 84 = 119 A. */
        @Test
        void addsEqualMotorsOnceAtTheirAllowance() {
            MotorFeeder feeder = new MotorFeeder();
            for (int i = 0; i < 4; i++) {
                feeder.addMotor(28, 70);
            }

            assertThat(feeder.conductorAmps()).isCloseTo(119, within(1e-9));
        }

        @Test
        void addsOtherLoadsAtTheirRating() {
            MotorFeeder feeder = new MotorFeeder();
            feeder.addMotor(30.8, 80);
            feeder.addOther(20, 25);

            // 1.25 · 30.8 + 1.25 · 20; 80 + 1.25 · 20 = 105, so 100
            assertThat(feeder.conductorAmps()).isCloseTo(63.5, within(1e-9));
            // 1.25 · 30.8 + 20, and 30.8 + 1.25 · 20
            assertThat(feeder.correctedConductorAmps()).isCloseTo(58.5, within(1e-9));
            assertThat(feeder.ratingAmps()).isCloseTo(55.8, within(1e-9));
            assertThat(feeder.standardDeviceAmps()).isEqualTo(100);
        }
    }
}
