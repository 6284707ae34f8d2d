package evenrise.model.review;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.LoadBuilder;
import evenrise.model.PlanBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.project.CodeLetter;
import evenrise.model.project.Device;
import evenrise.model.project.Feeder;
import evenrise.model.project.InstantaneousRange;
import evenrise.model.project.Phase;
import evenrise.model.project.TripCurve;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class DeviceTripCheckTest {
    private static final double SLOW_MILLIS = 500;

    private static Device device(double ratedAmps, double low, double high) {
        return Device.builder()
                .ratedAmps(ratedAmps)
                .instantaneous(new InstantaneousRange(low, high))
                .build();
    }

    /** On phase A of panel P1 and on board B1, at 0 s and 0.5 s; each draws 2,000 A crest for longer than a half-cycle. */
    private static ProjectBuilder twoTransformers() {
        return aProject().boards(aBoard("B1").in("P1")).loads(transformer("T1"), transformer("T2"));
    }

    private static LoadBuilder transformer(String id) {
        return aLoad(id).runningAmps(40).idleAmps(10).inrushPeakAmps(2000).inrushHalfMillis(SLOW_MILLIS);
    }

    private static PlanBuilder inTurn() {
        return aPlan().board("B1", 0, 0.5)
                .assignments(
                        anAssignment("T1").at("P1", 1, Phase.A).on("B1", 1),
                        anAssignment("T2").at("P1", 7, Phase.A).on("B1", 2));
    }

    private static Reviews reviewed(ProjectBuilder project) {
        return Reviews.of(new DeviceTripCheck(), project.build(), inTurn().build());
    }

    private static List<Remark> said(Reviews reviews) {
        return reviews.remarks().stream()
                .filter(remark -> remark.grade() != Grade.NOT_CHECKED)
                .toList();
    }

    private static ProjectBuilder withMain(double ratedAmps, double low, double high) {
        return twoTransformers().supply(aSupply().with(it -> it.main(device(ratedAmps, low, high))));
    }

    /**
     * T1 alone counts for 10 A and (2000 − √2·10)/√2 = 1404.2 A, in all 1414.2 A, since its half-life of 500 ms leaves it a
     * sine over a half-cycle. When T2 comes on 500 ms later, half of T1's excess is left (a half-cycle of 8.333 ms before is
     * counted as full): 10 + 1404.2·2^(−(500 − 8.333)/500) + 1414.2 = 2134.5 A.
     */
    private static final double IN_TURN_AMPS = 2134.5;

    @Nested
    class MainOfTheSupply {
        @Test
        void seesTheSequenceAsTripsCountIt() {
            assertThat(reviewed(twoTransformers()).figure("supply", "current at a trip in the sequence"))
                    .isCloseTo(IN_TURN_AMPS, within(0.5));
        }

        /** Deep dip in full use: 2 · (40 + 1404.2) = 2888.4 A. */
        @Test
        void seesADipInFullUse() {
            assertThat(reviewed(twoTransformers())
                            .figure("supply", "current at a trip when a deep dip is ridden through"))
                    .isCloseTo(2888.4, within(0.1));
        }

        @Test
        void holdsBelowItsRange() {
            // 300 A · 10 = 3000 A
            assertThat(said(reviewed(withMain(300, 10, 12)))).isEmpty();
        }

        @Test
        void mayTripInsideItsRange() {
            // 288 A · 10 = 2880 A; 288 A · 12 = 3456 A
            assertThat(said(reviewed(withMain(288, 10, 12)))).singleElement().satisfies(remark -> {
                assertThat(remark.grade()).isEqualTo(Grade.EXCEEDS_RECOMMENDATION);
                assertThat(remark.place()).isEqualTo("supply");
                assertThat(remark.message()).contains("2880.00 A", "3456.00 A", "deep dip", "may trip");
            });
        }

        @Test
        void tripsAboveItAndSaysWhatElseDoes() {
            // 200 A · 12 = 2400 A; the sequence may trip it, too
            assertThat(said(reviewed(withMain(200, 10, 12)))).singleElement().satisfies(remark -> {
                assertThat(remark.grade()).isEqualTo(Grade.BREAKS);
                assertThat(remark.message()).contains("it trips; also", "in the sequence");
            });
        }

        @Test
        void isRatedAsTheSupplyWhereItStatesNoRating() {
            Device bare = Device.builder().curve(TripCurve.C).build();

            // 400 A · 5 = 2000 A, 400 A · 10 = 4000 A
            assertThat(said(reviewed(twoTransformers().supply(aSupply().with(it -> it.main(bare))))))
                    .singleElement()
                    .satisfies(remark -> assertThat(remark.message()).contains("2000.00 A", "4000.00 A"));
        }
    }

    @Nested
    class DevicesOfAPanel {
        @Test
        void areHeldAgainstWhatThePanelFeeds() {
            Feeder feeder = Feeder.builder()
                    .breakerAmps(225)
                    .device(Device.builder()
                            .instantaneous(new InstantaneousRange(5, 10))
                            .build())
                    .build();

            // 225 A · 10 = 2250 A
            assertThat(said(reviewed(twoTransformers().panels(aPanel("P1").feeder(feeder)))))
                    .singleElement()
                    .satisfies(remark -> {
                        assertThat(remark.place()).isEqualTo("P1");
                        assertThat(remark.grade()).isEqualTo(Grade.BREAKS);
                        assertThat(remark.message()).startsWith("the feeder device of panel 'P1' of 225.00 A");
                    });
        }

        @Test
        void eachCountByThemselves() {
            assertThat(said(reviewed(twoTransformers()
                            .panels(aPanel("P1")
                                    .feeder(Feeder.builder()
                                            .device(device(225, 20, 25))
                                            .build())
                                    .with(it -> it.main(device(200, 5, 10)))))))
                    .singleElement()
                    .satisfies(remark -> assertThat(remark.message()).startsWith("the main of panel 'P1' of 200.00 A"));
        }
    }

    @Nested
    class BranchBreaker {
        /** 100 A counted; at rest 10 + 70.7 · … is below 5 · 16 = 80 A, in full use 25 A more are not. */
        @Test
        void mayTripAfterADipInFullUseAlone() {
            LoadBuilder wall = aLoad("wall")
                    .unswitched()
                    .breakerAmps(16)
                    .curve(TripCurve.C)
                    .runningAmps(14)
                    .idleAmps(2)
                    .inrushPeakAmps(Math.sqrt(2) * 75)
                    .inrushHalfMillis(SLOW_MILLIS);

            // from rest 75 A; in full use 14 + 73 = 87 A
            assertThat(said(Reviews.of(
                            new DeviceTripCheck(),
                            aProject().loads(wall).build(),
                            aPlan().assignments(anAssignment("wall").at("P1", 1))
                                    .build())))
                    .singleElement()
                    .satisfies(remark -> {
                        assertThat(remark.grade()).isEqualTo(Grade.EXCEEDS_RECOMMENDATION);
                        assertThat(remark.figure().getAsDouble()).isCloseTo(87, within(0.05));
                    });
        }
    }

    @Test
    void seesAMotorThatStartsInService() {
        // 10 hp, letter H, 208 V: 7.09 kVA/hp · 10 · 1000/(√3 · 207.85 V) = 196.9 A; and 20 A of another load on its
        // phase
        Reviews reviews = Reviews.of(
                new DeviceTripCheck(),
                aProject()
                        .loads(
                                Motors.threePhase("fan", Motors.horsepower(10).codeLetter(CodeLetter.H))
                                        .runningAmps(28),
                                aLoad("lamp").unswitched().runningAmps(20))
                        .build(),
                aPlan().assignments(
                                anAssignment("fan").at("P1", 1),
                                anAssignment("lamp").at("P1", 2))
                        .build());

        assertThat(reviews.figure("P1", "current at a trip when motor 'fan' starts in service"))
                .isCloseTo(216.9, within(0.1));
    }

    @Test
    void namesWhatItKnowsNothingOf() {
        assertThat(reviewed(twoTransformers()).remarks())
                .extracting(Remark::message)
                .anyMatch(message -> message.contains("supply.main"))
                .anyMatch(message -> message.contains("feeder.device") && message.contains("'P1'"));
    }
}
