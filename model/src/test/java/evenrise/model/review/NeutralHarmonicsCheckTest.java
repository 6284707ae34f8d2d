package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.plan.Grade;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Remark;
import evenrise.model.project.Project;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class NeutralHarmonicsCheckTest {
    private static Plan spread() {
        return aPlan().assignments(
                        anAssignment("L1").at("P1", 1),
                        anAssignment("L2").at("P1", 3),
                        anAssignment("L3").at("P1", 5))
                .build();
    }

    private static Project project(double amps, double third, double neutralFactor, double ratedAmps) {
        return aProject()
                .panels(aPanel("P1").ratedAmps(ratedAmps).neutralFactor(neutralFactor))
                .loads(
                        aLoad("L1")
                                .unswitched()
                                .runningAmps(amps)
                                .idleAmps(amps / 2)
                                .thirdHarmonic(third),
                        aLoad("L2")
                                .unswitched()
                                .runningAmps(amps)
                                .idleAmps(amps / 2)
                                .thirdHarmonic(third),
                        aLoad("L3")
                                .unswitched()
                                .runningAmps(amps)
                                .idleAmps(amps / 2)
                                .thirdHarmonic(third))
                .build();
    }

    private static Reviews reviewed(Project project) {
        return Reviews.of(new NeutralHarmonicsCheck(), project, spread());
    }

    @Nested
    class Figures {
        @Test
        void tellBothConventionsApart() {
            Reviews reviews = reviewed(project(10, 0.7, 2, 225));

            // 3·0.7/√1.49 = 1.7204 of 10 A, and 3·0.7 = 2.1 of 10 A
            assertThat(reviews.figure("P1", "neutral, third harmonic over fundamental"))
                    .isCloseTo(17.204, within(0.001));
            assertThat(reviews.figure("P1", "neutral, third harmonic over line current"))
                    .isCloseTo(21, within(0.001));
        }

        @Test
        void holdIdleBesideFullUse() {
            assertThat(reviewed(project(10, 0.7, 2, 225)).figure("P1", "neutral at idle"))
                    .isCloseTo(8.602, within(0.001));
        }

        @Test
        void loadANeutralOfTwiceTheSizeHalfAsMuch() {
            Reviews reviews = reviewed(project(10, 0.7, 2, 100));

            assertThat(reviews.figure("P1", "load of a 100 % neutral")).isCloseTo(17.204, within(0.001));
            assertThat(reviews.figure("P1", "load of a 200 % neutral")).isCloseTo(8.602, within(0.001));
        }
    }

    @Nested
    class Remarks {
        @Test
        void sayThatTheOtherReadingExceedsTheNeutral() {
            assertThat(reviewed(project(10, 0.7, 1, 20)).remarks()).anySatisfy(remark -> {
                assertThat(remark.grade()).isEqualTo(Grade.EXCEEDS_RECOMMENDATION);
                assertThat(remark.place()).isEqualTo("P1");
                assertThat(remark.figure().orElseThrow()).isCloseTo(21, within(0.001));
                assertThat(remark.message()).contains("21.00 A", "20.00 A", "200 %");
            });
        }

        @Test
        void areSilentExactlyAtTheCapacity() {
            assertThat(reviewed(project(10, 0.7, 1, 21.0000001)).remarks())
                    .extracting(Remark::grade)
                    .doesNotContain(Grade.EXCEEDS_RECOMMENDATION);
        }

        @Test
        void noteANeutralAboveItsLines() {
            assertThat(reviewed(project(10, 0.5, 1, 225)).remarks())
                    .extracting(Remark::grade)
                    .containsOnly(Grade.NOTE);
            assertThat(reviewed(project(10, 0.3, 1, 225)).remarks()).isEmpty();
        }

        @Test
        void flagWhatRectifiersCannotReach() {
            assertThat(reviewed(project(10, 0.8, 2, 225)).remarks())
                    .anySatisfy(remark -> assertThat(remark.message()).contains("√3"));
            assertThat(reviewed(project(10, 0.7, 2, 225)).remarks())
                    .noneSatisfy(remark -> assertThat(remark.message()).contains("√3"));
        }
    }

    /** One load alone returns by the neutral what its line brings, to the last bits. */
    @Test
    void saysNothingOfANeutralThatCarriesWhatItsLineDoes() {
        for (int percent = 0; percent < 200; percent++) {
            double third = percent / 100.0;
            Project alone = aProject()
                    .panels(aPanel("P1"))
                    .loads(aLoad("L1").unswitched().runningAmps(10).thirdHarmonic(third))
                    .build();
            Reviews reviews = Reviews.of(
                    new NeutralHarmonicsCheck(),
                    alone,
                    aPlan().assignments(anAssignment("L1").at("P1", 1)).build());

            assertThat(reviews.remarks())
                    .extracting(Remark::message)
                    .noneMatch(message -> message.contains("more than any line"));
        }
    }
}
