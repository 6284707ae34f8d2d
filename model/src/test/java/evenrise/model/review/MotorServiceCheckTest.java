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
import evenrise.model.PanelBuilder;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.project.CodeLetter;
import evenrise.model.project.DipCriterion;
import evenrise.model.project.Electrical;
import evenrise.model.project.MotorBuilder;
import evenrise.model.project.RideThrough;
import evenrise.model.project.TripCurve;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** A motor of 196.8 A at standstill, power factor 0.4, at 120.09 V to neutral. */
class MotorServiceCheckTest {
    private static final double VOLTS = 120.09;

    /** |0.02 + j0.03 Ω| is 0.036056 Ω, so a fault of 120.09 V/0.036056 Ω = 3,330.7 A at X/R = 1.5. */
    private static final Electrical SOURCE = Cabling.NEC.withSource(
            Optional.of(Sources.utility(VOLTS / Math.hypot(0.02, 0.03)).withXOverR(OptionalDouble.of(1.5))));

    private static LoadBuilder motor(MotorBuilder motor) {
        return Motors.threePhase("fan", motor.lockedRotorAmps(196.8))
                .runningAmps(28)
                .breakerAmps(80);
    }

    private static MotorBuilder lagging() {
        return Motors.horsepower(10).lockedRotorPowerFactor(0.4);
    }

    private static Reviews reviewed(Electrical electrical, PanelBuilder panel, LoadBuilder... loads) {
        PanelBuilder[] panels = {panel};
        return Reviews.of(
                new MotorServiceCheck(),
                aProject()
                        .supply(aSupply().lineToNeutralVolts(VOLTS))
                        .electrical(electrical)
                        .panels(panels)
                        .loads(loads)
                        .build(),
                aPlan().assignments(
                                anAssignment("fan").at("P1", 1),
                                anAssignment("rack").at("P1", 2),
                                anAssignment("fan-2").at("P1", 8))
                        .build());
    }

    private static Reviews reviewed(Electrical electrical, LoadBuilder... loads) {
        return reviewed(electrical, aPanel("P1"), loads);
    }

    private static List<Remark> said(Reviews reviews) {
        return reviews.remarks().stream()
                .filter(remark -> remark.grade() != Grade.NOT_CHECKED)
                .toList();
    }

    private static double dip(Reviews reviews, String node) {
        return reviews.figure(node, "voltage dip when motor 'fan' starts in service");
    }

    @Nested
    class Dip {
        /** Of a constant impedance behind the source, by hand: 5.502 % (5.811 % were its current constant). */
        @Test
        void isThatOfAnImpedanceBehindTheSource() {
            assertThat(dip(reviewed(SOURCE, motor(lagging())), "supply")).isCloseTo(5.502, within(5e-4));
        }

        /**
         * At any power factor: |Zs + Zl| is least where both have the same angle, so the voltage that is left is least there:
         * Zl/(Zl + Zs) with Zl = 120.09/196.8 = 0.610213 Ω: 1 − 0.610213/0.646269 = 5.579 %.
         */
        @Test
        void isTheWorstOfAllWhereThePowerFactorIsNotStated() {
            assertThat(dip(reviewed(SOURCE, motor(Motors.horsepower(10))), "supply"))
                    .isCloseTo(5.579, within(2e-3));
        }

        /**
         * 30 m of 1/0 AWG copper in nonmetallic conduit are 0.12 + j0.044 Ω/kft (NEC chapter 9 table 9), 0.011811 + j0.004331 Ω.
         * Zl = 0.610213∠66.42° = 0.244085 + j0.559267 Ω; all in series 0.275896 + j0.593600 Ω, 0.654584 Ω. At the panel
         * 1 − 0.610213/0.654584 = 6.778 % are lost; at the supply 1 − |Zl + feeder|/0.654589 = 1 − 0.618973/0.654584 = 5.440 %.
         */
        @Test
        void isDeeperBehindTheFeeder() {
            PanelBuilder fed = aPanel("P1").feeder(Cabling.feeder(Cabling.cable("1/0 AWG", 30), 150));
            Reviews reviews = reviewed(SOURCE, fed, motor(lagging()));

            assertThat(dip(reviews, "P1")).isCloseTo(6.778, within(0.02));
            assertThat(dip(reviews, "supply")).isCloseTo(5.440, within(0.02));
        }

        @Test
        void isHeldAgainstTheCriteriaThatTheProjectNames() {
            Electrical named = SOURCE.withDipCriteria(List.of(DipCriterion.EN_50160, DipCriterion.IEC_61000_3_3));

            assertThat(said(reviewed(named, motor(lagging()))))
                    .extracting(Remark::grade, remark -> remark.limit().getAsDouble())
                    .containsExactly(
                            org.assertj.core.api.Assertions.tuple(Grade.EXCEEDS_RECOMMENDATION, 5.0),
                            org.assertj.core.api.Assertions.tuple(Grade.EXCEEDS_RECOMMENDATION, 4.0));
        }
    }

    @Nested
    class BrownOut {
        private LoadBuilder rack(double remainingPercent) {
            return aLoad("rack")
                    .unswitched()
                    .runningAmps(0)
                    .with(it -> it.rideThrough(RideThrough.builder()
                            .remainingPercent(remainingPercent)
                            .withoutMillis(20)
                            .build()));
        }

        /** 94.498 % remain. */
        @Test
        void isToldOfWhoeverNeedsMore() {
            assertThat(said(reviewed(SOURCE, motor(lagging()), rack(94.4)))).isEmpty();
            assertThat(said(reviewed(SOURCE, motor(lagging()), rack(94.6))))
                    .singleElement()
                    .satisfies(remark -> {
                        assertThat(remark.grade()).isEqualTo(Grade.BREAKS);
                        assertThat(remark.place()).isEqualTo("rack");
                        assertThat(remark.message()).contains("94.5 %", "94.6 %");
                    });
        }

        /** 94.42 % at the worst power factor, far more at unity: without a power factor nothing is broken for sure. */
        @Test
        void isNoBreakWhereThePowerFactorDecides() {
            assertThat(said(reviewed(SOURCE, motor(Motors.horsepower(10)), rack(94.6))))
                    .singleElement()
                    .satisfies(remark -> {
                        assertThat(remark.grade()).isEqualTo(Grade.EXCEEDS_RECOMMENDATION);
                        assertThat(remark.message()).contains("locked_rotor_power_factor");
                    });
        }
    }

    @Nested
    class Peak {
        /** √2 · (196.8 + 20) = 306.6 A with 20 A of another load on its phase. */
        private Reviews limited(double limitAmps) {
            return reviewed(
                    Cabling.NEC,
                    aPanel("P1").inrushLimitAmps(limitAmps),
                    motor(lagging()),
                    aLoad("rack").unswitched().runningAmps(20));
        }

        @Test
        void isStandstillOnTopOfFullUse() {
            assertThat(limited(400).figure("P1", "peak when a motor starts in service"))
                    .isCloseTo(306.6, within(0.05));
            assertThat(said(limited(307))).isEmpty();
            assertThat(said(limited(306))).singleElement().satisfies(remark -> {
                assertThat(remark.grade()).isEqualTo(Grade.BREAKS);
                assertThat(remark.message()).contains("306.6", "306.00 A", "'fan'");
            });
        }

        /** √2 · (2 · 196.8) = 556.6 A. */
        @Test
        void ofAllMotorsAtOnceIsATellingFigure() {
            LoadBuilder second = Motors.threePhase(
                            "fan-2", Motors.horsepower(10).lockedRotorAmps(196.8))
                    .runningAmps(28);
            Reviews reviews = reviewed(Cabling.NEC, aPanel("P1").inrushLimitAmps(500), motor(lagging()), second);

            assertThat(reviews.figure("P1", "peak when all motors start at once"))
                    .isCloseTo(556.6, within(0.1));
            assertThat(said(reviews)).singleElement().extracting(Remark::grade).isEqualTo(Grade.EXCEEDS_RECOMMENDATION);
        }
    }

    @Nested
    class Breaker {
        @Test
        void holdsWhatTheMotorDrawsAtStandstill() {
            // C80 holds up to 400 A, C32 up to 160 A and trips above 320 A, B32 trips above 160 A
            assertThat(said(reviewed(Cabling.NEC, motor(lagging()).curve(TripCurve.C))))
                    .isEmpty();
            assertThat(said(reviewed(
                            Cabling.NEC, motor(lagging()).breakerAmps(32).curve(TripCurve.C))))
                    .singleElement()
                    .extracting(Remark::grade)
                    .isEqualTo(Grade.EXCEEDS_RECOMMENDATION);
            assertThat(said(reviewed(
                            Cabling.NEC, motor(lagging()).breakerAmps(32).curve(TripCurve.B))))
                    .singleElement()
                    .extracting(Remark::grade)
                    .isEqualTo(Grade.BREAKS);
        }
    }

    @Test
    void isSilentWithoutMotorsWhoseStartIsKnown() {
        assertThat(Reviews.of(
                                new MotorServiceCheck(),
                                aProject()
                                        .loads(Motors.threePhase(
                                                "fan", Motors.horsepower(10).codeLetter(Optional.empty())))
                                        .build(),
                                aPlan().assignments(anAssignment("fan").at("P1", 1))
                                        .build())
                        .remarks())
                .isEmpty();
    }

    @Test
    void takesTheCodeLetterForWhatIsNotStated() {
        Reviews reviews = Reviews.of(
                new MotorServiceCheck(),
                aProject()
                        .loads(Motors.threePhase("fan", Motors.horsepower(10).codeLetter(CodeLetter.H))
                                .runningAmps(28))
                        .build(),
                aPlan().assignments(anAssignment("fan").at("P1", 1)).build());

        // √2 · 7.09 · 10 · 1000/(3 · 120 V) = 278.5 A
        assertThat(reviews.figure("P1", "peak when a motor starts in service")).isCloseTo(278.5, within(0.05));
    }
}
