package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.plan.Grade;
import evenrise.model.plan.Plan;
import org.junit.jupiter.api.Test;

class UnbalanceCheckTest {
    private static final Plan SPREAD = aPlan().assignments(
                    anAssignment("L1").at("P1", 1),
                    anAssignment("L2").at("P1", 3),
                    anAssignment("L3").at("P1", 5))
            .build();

    private static Reviews reviewed(double a, double b, double c, double idleA) {
        return Reviews.of(
                new UnbalanceCheck(),
                aProject()
                        .loads(
                                aLoad("L1").unswitched().runningAmps(a).idleAmps(idleA),
                                aLoad("L2").unswitched().runningAmps(b).idleAmps(b),
                                aLoad("L3").unswitched().runningAmps(c).idleAmps(c))
                        .build(),
                SPREAD);
    }

    @Test
    void givesNegativeAndZeroSequenceOfTheLines() {
        Reviews reviews = reviewed(10, 8, 6, 10);

        // By hand: I1 = (10 + 8 + 6)/3 = 8; I2 = I0 = |10 + 8a² + 6a|/3 = √(100 + 64 + 36 − 80 − 48 − 60)/3 = √12/3
        double expected = 100 * Math.sqrt(12) / 3 / 8;
        assertThat(reviews.figure("supply", "negative sequence at full use")).isCloseTo(expected, within(1e-9));
        assertThat(reviews.figure("supply", "zero sequence at full use")).isCloseTo(expected, within(1e-9));
        assertThat(reviews.figure("supply", "imbalance at full use")).isCloseTo(25, within(1e-9));
    }

    @Test
    void judgesIdleBesideFullUse() {
        Reviews reviews = reviewed(10, 10, 10, 4);

        assertThat(reviews.figure("P1", "imbalance at full use")).isZero();
        assertThat(reviews.figure("P1", "imbalance at idle")).isCloseTo(50, within(1e-9));
        assertThat(reviews.remarks()).hasSize(2).allSatisfy(remark -> {
            assertThat(remark.grade()).isEqualTo(Grade.NOTE);
            assertThat(remark.message()).contains("at idle", "50.0 %", "common practice");
        });
    }

    @Test
    void isSilentAtExactlyTheUsualBound() {
        assertThat(reviewed(11, 10, 9, 11).remarks()).isEmpty();
        assertThat(reviewed(11.01, 10, 8.99, 11).remarks()).isNotEmpty();
    }
}
