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
import evenrise.model.project.Circuit;
import evenrise.model.project.Electrical;
import evenrise.model.project.Practice;
import evenrise.model.project.TripCurve;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class BreakerTripCheckTest {
    private static Reviews reviewed(LoadBuilder load) {
        return Reviews.of(
                new BreakerTripCheck(), aProject().loads(load.unswitched()).build(), aPlan().build());
    }

    /** C16 holds up to 80 A and trips at once above 160 A; a slow inrush counts for its crest over √2. */
    private static LoadBuilder slow(double sineAmps) {
        return aLoad("fan")
                .breakerAmps(16)
                .curve(TripCurve.C)
                .runningAmps(0)
                .idleAmps(0)
                .inrushPeakAmps(Math.sqrt(2) * sineAmps)
                .inrushHalfMillis(500);
    }

    @Test
    void isSilentWhereTheBreakerHolds() {
        assertThat(reviewed(slow(79.9)).remarks()).isEmpty();
    }

    @Test
    void saysThatItMayTripInsideTheBand() {
        assertThat(reviewed(slow(90)).remarks()).singleElement().satisfies(remark -> {
            assertThat(remark.grade()).isEqualTo(Grade.EXCEEDS_RECOMMENDATION);
            assertThat(remark.message()).contains("'fan'", "may trip", "80.00 A", "160.00 A");
        });
    }

    @Test
    void saysThatItTripsBeyondTheBand() {
        assertThat(reviewed(slow(165)).remarks())
                .singleElement()
                .extracting(Remark::grade)
                .isEqualTo(Grade.BREAKS);
    }

    @Test
    void countsAShortPulseForLess() {
        LoadBuilder rectifier = aLoad("dsp")
                .breakerAmps(16)
                .curve(TripCurve.C)
                .runningAmps(0)
                .idleAmps(0)
                .inrushPeakAmps(150)
                .inrushHalfMillis(1);

        Reviews reviews = reviewed(rectifier);

        // √(½ · 150² · 1.443 ms · (1 − 2^(−2·8.33)) / 8.333 ms) at 60 Hz
        assertThat(reviews.figure("dsp", "inrush at the trip, as a pulse")).isCloseTo(44.13, within(0.02));
        assertThat(reviews.figure("dsp", "inrush at the trip, as a sine")).isCloseTo(106.07, within(0.01));
        assertThat(reviews.remarks()).isEmpty();
    }

    @Test
    void saysHowManyDevicesOneBreakerStarts() {
        LoadBuilder lamps = slow(160)
                .circuit(Circuit.builder()
                        .continuous(true)
                        .fullyRated(false)
                        .devices(8)
                        .build());

        assertThat(reviewed(lamps).remarks())
                .singleElement()
                .extracting(Remark::message)
                .asString()
                .contains("at most 4 of its 8 devices");
    }

    @Test
    void widensAnAdjustableSettingByItsTolerance() {
        LoadBuilder load = slow(80).circuit(Circuit.builder()
                .continuous(true)
                .fullyRated(false)
                .instantaneousRatio(8)
                .devices(1)
                .build());

        // 8 · 16 A · 0.7 = 89.6 A
        assertThat(reviewed(load).remarks()).isEmpty();
        assertThat(reviewed(slow(90).circuit(Circuit.builder()
                                .continuous(true)
                                .fullyRated(false)
                                .instantaneousRatio(8)
                                .devices(1)
                                .build()))
                        .remarks())
                .hasSize(1);
    }

    @Test
    void saysWhatItLacks() {
        assertThat(reviewed(aLoad("L1")).remarks())
                .singleElement()
                .extracting(Remark::grade)
                .isEqualTo(Grade.NOT_CHECKED);
    }

    /** A band that trips later is proposed only where a fault still trips it: 40 m of 2.5 with 2.5 mm², 206.3 A at least. */
    @Nested
    class AdvisesALaterBand {
        private String cure(double breakerAmps, TripCurve curve, double sineAmps, Circuit circuit) {
            LoadBuilder load =
                    slow(sineAmps).breakerAmps(breakerAmps).curve(curve).circuit(circuit);
            return Reviews.of(
                            new BreakerTripCheck(),
                            aProject()
                                    .supply(aSupply().lineToNeutralVolts(230).frequencyHertz(50))
                                    .electrical(Electrical.builder()
                                            .practice(Practice.IEC)
                                            .source(Sources.utility(10_000).withFaultLoopOhms(OptionalDouble.of(0.35)))
                                            .build())
                                    .panels(aPanel("P1")
                                            .feeder(Cabling.feeder(
                                                    Cabling.cable("16 mm2", 0)
                                                            .withProtectiveSize(Optional.of("16 mm2")),
                                                    63)))
                                    .loads(load.unswitched())
                                    .build(),
                            aPlan().assignments(anAssignment("fan").at("P1", 1)).build())
                    .remarks()
                    .get(0)
                    .message();
        }

        private Circuit wired(String protective) {
            return Cabling.circuit(Cabling.cable("2.5 mm2", 40).withProtectiveSize(Optional.ofNullable(protective)));
        }

        @Test
        void whereTheLoopTripsIt() {
            // B16 holds 48 A, C16 holds 80 and trips at 160 A
            assertThat(cure(16, TripCurve.B, 70, wired("2.5 mm2"))).contains("Maybe take curve C", "206.27 A");
        }

        @Test
        void notWhereTheLoopDoesNot() {
            // C16 holds 80 A; D16 would hold 160 and is sure only at 320 A
            assertThat(cure(16, TripCurve.C, 120, wired("2.5 mm2")))
                    .contains("a later trip is of no use here", "206.27 A", "12.9 times")
                    .doesNotContain("curve D");
        }

        @Test
        void freelyBehindAResidualCurrentDevice() {
            assertThat(cure(16, TripCurve.C, 120, wired("2.5 mm2").withResidualCurrentAmps(OptionalDouble.of(0.03))))
                    .contains("take a band that trips later, since its residual-current device");
        }

        @Test
        void withTheWordThatTheLoopIsNotChecked() {
            assertThat(cure(16, TripCurve.B, 70, wired(null)))
                    .contains("not checked: needs circuit.cable and its protective_size");
        }

        /** Between what the inrush wants held and what a fault draws. */
        @Test
        void asASettingBetweenInrushAndFault() {
            Circuit set = wired("2.5 mm2").withInstantaneousRatio(OptionalDouble.of(5));

            // 5 · 16 · 0.7 = 56 A
            assertThat(cure(16, TripCurve.B, 70, set)).contains("holds 70.00 A", "trips at once by 206.27 A");
        }
    }
}
