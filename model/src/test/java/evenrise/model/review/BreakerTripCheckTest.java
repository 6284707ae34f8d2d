package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.LoadBuilder;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.project.Circuit;
import evenrise.model.project.TripCurve;
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
}
