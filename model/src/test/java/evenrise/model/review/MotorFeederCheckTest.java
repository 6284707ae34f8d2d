package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.PanelBuilder;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.project.Feeder;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class MotorFeederCheckTest {
    /**
     * Annex D8 of the NEC, with breakers (the example itself has fuses): 25 hp of 34 A and two wound rotors of 30 hp and 40 A
     * at 480 V. Conductors 1.25 · 40 + 40 + 34 = 124 A; device 90 (2.5 · 34 = 85) + 40 + 40 = 170 A, so 150 A.
     */
    private static Reviews annex(Feeder feeder) {
        return annex(aPanel("P1").feeder(feeder));
    }

    private static Reviews annex(PanelBuilder panel) {
        return Reviews.of(
                new MotorFeederCheck(),
                aProject()
                        .supply(aSupply().lineToNeutralVolts(277))
                        .electrical(Cabling.NEC)
                        .panels(panel)
                        .loads(
                                Motors.threePhase("cage", Motors.horsepower(25)).runningAmps(30),
                                Motors.threePhase(
                                                "wound-1", Motors.horsepower(30).woundRotor(true))
                                        .runningAmps(36),
                                Motors.threePhase(
                                                "wound-2", Motors.horsepower(30).woundRotor(true))
                                        .runningAmps(36))
                        .build(),
                aPlan().assignments(
                                anAssignment("cage").at("P1", 1),
                                anAssignment("wound-1").at("P1", 2),
                                anAssignment("wound-2").at("P1", 7))
                        .build());
    }

    private static Feeder of(String size, double deviceAmps) {
        return Cabling.feeder(Cabling.cable(size, 30, OptionalDouble.of(75), OptionalInt.empty()), deviceAmps);
    }

    private static List<Remark> said(Reviews reviews) {
        return reviews.remarks().stream()
                .filter(remark -> remark.grade() != Grade.NOT_CHECKED)
                .toList();
    }

    /** 1 AWG carries 130 A at 75 °C, 2 AWG 115 A. */
    @Test
    void carriesTheLargestMotorAtAQuarterMore() {
        Reviews kept = annex(of("1 AWG", 150));

        assertThat(kept.figure("P1", "ampacity that the motors ask for")).isCloseTo(124, within(1e-9));
        assertThat(said(kept)).isEmpty();
        assertThat(said(annex(of("2 AWG", 150)))).singleElement().satisfies(remark -> {
            assertThat(remark.grade()).isEqualTo(Grade.BREAKS);
            assertThat(remark.clause()).isEqualTo("NEC 430.24");
            assertThat(remark.message()).contains("115.00 A", "124.00 A");
        });
    }

    @Test
    void allowsADeviceOfTheLargestBranchAndTheOthers() {
        Reviews kept = annex(of("1 AWG", 150));

        assertThat(kept.figure("P1", "largest device that the motors allow")).isEqualTo(150);
        assertThat(said(annex(of("1 AWG", 175)))).singleElement().satisfies(remark -> {
            assertThat(remark.grade()).isEqualTo(Grade.BREAKS);
            assertThat(remark.message()).contains("175.00 A", "150.00 A");
        });
    }

    /** 3/0 AWG carries 200 A, and 430.62(B) lets the conductor decide. */
    @Test
    void allowsADeviceByALargerConductor() {
        assertThat(said(annex(of("3/0 AWG", 200)))).isEmpty();
    }

    @Test
    void needsADeviceThatCarriesThemAll() {
        // 34 + 40 + 40 = 114 A
        assertThat(said(annex(of("1 AWG", 110))))
                .singleElement()
                .satisfies(remark -> assertThat(remark.message()).contains("114.00 A", "110.00 A"));
    }

    @Test
    void isNoBreakWhereTheConductorIsNotKnown() {
        assertThat(said(annex(aPanel("P1").ratedAmps(175))))
                .singleElement()
                .extracting(Remark::grade)
                .isEqualTo(Grade.EXCEEDS_RECOMMENDATION);
    }

    @Test
    void isLeftToTheMotorsRules() {
        Reviews general = Reviews.of(
                new ConductorCheck(),
                aProject()
                        .electrical(Cabling.NEC)
                        .panels(aPanel("P1").feeder(of("1 AWG", 150)))
                        .loads(Motors.threePhase("fan", Motors.horsepower(10)).runningAmps(26))
                        .build(),
                aPlan().assignments(anAssignment("fan").at("P1", 1)).build());

        assertThat(general.remarks()).isEmpty();
    }

    @Test
    void isSilentWithoutMotors() {
        Reviews reviews = Reviews.of(
                new MotorFeederCheck(),
                aProject()
                        .electrical(Cabling.NEC)
                        .loads(aLoad("L1").unswitched())
                        .build(),
                aPlan().assignments(anAssignment("L1").at("P1", 1)).build());

        assertThat(reviews.remarks()).isEmpty();
    }

    @Test
    void saysWhichMotorItKnowsTooLittleOf() {
        Reviews reviews = Reviews.of(
                new MotorFeederCheck(),
                aProject()
                        .electrical(Cabling.NEC)
                        .loads(Motors.threePhase("fan", evenrise.model.project.Motor.builder()))
                        .build(),
                aPlan().assignments(anAssignment("fan").at("P1", 1)).build());

        assertThat(reviews.remarks()).singleElement().extracting(Remark::grade).isEqualTo(Grade.NOT_CHECKED);
    }
}
