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
import evenrise.model.plan.Plan;
import evenrise.model.project.Electrical;
import evenrise.model.project.Project;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class NeutralUseCheckTest {
    private static final Plan ONE_EACH = aPlan().assignments(
                    anAssignment("L1").at("P1", 1),
                    anAssignment("L2").at("P1", 3),
                    anAssignment("L3").at("P1", 5))
            .build();

    private static Project project(Electrical electrical, PanelBuilder panel, double amps, double third) {
        return aProject()
                .supply(aSupply().ratedAmps(400).neutralFactor(2))
                .panels(panel)
                .loads(
                        aLoad("L1").unswitched().runningAmps(amps).thirdHarmonic(third),
                        aLoad("L2").unswitched().runningAmps(amps).thirdHarmonic(third),
                        aLoad("L3").unswitched().runningAmps(amps).thirdHarmonic(third))
                .electrical(electrical)
                .build();
    }

    private static Reviews reviewed(Project project) {
        return Reviews.of(new NeutralUseCheck(), project, ONE_EACH);
    }

    @Nested
    class OfAPanel {
        /** All on: 0 A. One phase on: 75 A, which is what NEC 220.61(A) counts, against 0.5·100 A. */
        @Test
        void breaksAReducedNeutralThatUniformUseHides() {
            Reviews reviews =
                    reviewed(project(Cabling.NEC, aPanel("P1").ratedAmps(100).neutralFactor(0.5), 75, 0));

            assertThat(reviews.figure("P1", "neutral at worst use")).isCloseTo(75, within(1e-6));
            assertThat(reviews.remarks())
                    .filteredOn(each -> each.grade() == Grade.BREAKS)
                    .singleElement()
                    .satisfies(remark -> {
                        assertThat(remark.place()).isEqualTo("P1");
                        assertThat(remark.figure()).hasValueCloseTo(75.0, within(1e-6));
                        assertThat(remark.limit()).hasValue(50);
                        assertThat(remark.clause()).isEqualTo("NEC 220.61(A)");
                        assertThat(remark.message()).contains("75.00 A", "0.00 A with all of them on", "50.00 A");
                    });
        }

        @Test
        void keepsANeutralThatIsFullExactly() {
            assertThat(reviewed(project(Cabling.NEC, aPanel("P1").ratedAmps(100).neutralFactor(0.75), 75, 0))
                            .remarks())
                    .noneMatch(each -> each.grade() == Grade.BREAKS);
        }
    }

    @Nested
    class OfAFeedersCable {
        private static PanelBuilder fedBy(String size, double neutralFactor) {
            return aPanel("P1")
                    .ratedAmps(225)
                    .neutralFactor(neutralFactor)
                    .feeder(Cabling.feeder(
                            Cabling.insulated(Cabling.cable(size, 10).withConductorCelsius(OptionalDouble.of(75))),
                            80));
        }

        /**
         * 56 A a line with I3/I1 = 0.7: 3·0.7·56/√1.49 = 96.34 A. NEC table 310.16, 4 AWG at 90 °C: 95 A, four conductors
         * 0.8: 76 A.
         */
        @Test
        void isAgainstItsAmpacity() {
            Reviews reviews = reviewed(project(Cabling.NEC, fedBy("4 AWG", 1), 56, 0.7));

            assertThat(reviews.remarks())
                    .filteredOn(each -> each.grade() == Grade.BREAKS)
                    .singleElement()
                    .satisfies(remark -> {
                        assertThat(remark.figure()).hasValueCloseTo(96.34, within(0.01));
                        assertThat(remark.limit()).hasValueCloseTo(76.0, within(1e-9));
                        assertThat(remark.message()).contains("feeder of panel 'P1' (4 AWG)");
                    });
        }

        @Test
        void holdsInTwoConductorsButNotInOneAndAHalf() {
            assertThat(reviewed(project(Cabling.NEC, fedBy("4 AWG", 2), 56, 0.7))
                            .remarks())
                    .noneMatch(each -> each.grade() == Grade.BREAKS);
            // One conductor of half as much metal again carries less than 1.5·76 A, so 76 A is what counts.
            assertThat(reviewed(project(Cabling.NEC, fedBy("4 AWG", 1.5), 56, 0.7))
                            .remarks())
                    .anyMatch(each -> each.grade() == Grade.BREAKS);
        }

        @Test
        void isSaidNotToBeCheckedWhereNoneIsStated() {
            assertThat(reviewed(project(Cabling.NEC, aPanel("P1"), 10, 0)).remarks())
                    .singleElement()
                    .satisfies(remark -> assertThat(remark.grade()).isEqualTo(Grade.NOT_CHECKED));
        }
    }
}
