package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.plan.Grade;
import evenrise.model.plan.Plan;
import evenrise.model.project.Electrical;
import evenrise.model.project.ElectricalBuilder;
import evenrise.model.project.SourceKind;
import evenrise.model.project.SupplySource;
import evenrise.model.project.UnbalanceLimits;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Consumer;
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

    private static Electrical electrical(Consumer<ElectricalBuilder> with) {
        ElectricalBuilder builder = Electrical.builder();
        with.accept(builder);
        return builder.build();
    }

    /** One load of 30 A on A of a supply of 120 V: I0 = I1 = I2 = 10 A. */
    private static Reviews oneLineLoaded(Electrical electrical) {
        return Reviews.of(
                new UnbalanceCheck(),
                aProject()
                        .electrical(electrical)
                        .loads(aLoad("L1").unswitched().runningAmps(30).idleAmps(0))
                        .build(),
                aPlan().assignments(anAssignment("L1").at("P1", 1)).build());
    }

    private static List<Grade> grades(Reviews reviews) {
        return reviews.remarks().stream()
                .map(remark -> remark.grade())
                .filter(grade -> grade != Grade.NOTE)
                .toList();
    }

    private static SupplySource generator(double kva, OptionalDouble statedPercent) {
        return SupplySource.builder()
                .kind(SourceKind.GENERATOR)
                .ratedKva(kva)
                .negativeSequencePercent(statedPercent)
                .build();
    }

    @Test
    void givesBothSumsAndPhasorsOfTheLines() {
        Reviews reviews = Reviews.of(
                new UnbalanceCheck(),
                aProject()
                        .loads(
                                aLoad("ab").twoPole().unswitched().runningAmps(15),
                                aLoad("ca").twoPole().unswitched().runningAmps(15),
                                aLoad("b").unswitched().runningAmps(15).powerFactor(0.6),
                                aLoad("c").unswitched().runningAmps(15).powerFactor(0.6))
                        .build(),
                aPlan().assignments(
                                anAssignment("ab").at("P1", 1),
                                anAssignment("ca").at("P1", 5),
                                anAssignment("b").at("P1", 9),
                                anAssignment("c").at("P1", 11))
                        .build());

        // Sums 30/30/30 A. Phasors: A 15∠30 − 15∠150 = 25.98; B 15∠−150 + 15∠−173.13 = 29.39;
        // C 15∠150 + 15∠66.87 = 22.45 A
        for (String line : new String[] {"A", "B", "C"}) {
            assertThat(reviews.figure("P1", "sum of currents at full use, line " + line))
                    .isCloseTo(30, within(1e-9));
        }
        assertThat(reviews.figure("P1", "line current by phasors at full use, line A"))
                .isCloseTo(25.98, within(0.005));
        assertThat(reviews.figure("P1", "line current by phasors at full use, line B"))
                .isCloseTo(29.39, within(0.005));
        assertThat(reviews.figure("P1", "line current by phasors at full use, line C"))
                .isCloseTo(22.45, within(0.005));
        assertThat(reviews.figure("P1", "imbalance at full use")).isCloseTo(0, within(1e-9));
        // (25.94 − 22.45)/25.94
        assertThat(reviews.figure("P1", "imbalance by phasors at full use")).isCloseTo(13.5, within(0.1));
    }

    @Test
    void holdsAGeneratorToItsMakersNegativeSequenceOrToUsualOnes() {
        // 10 A of 36 kVA/360 V = 100 A: 10 %
        assertThat(grades(oneLineLoaded(electrical(it -> it.source(generator(36, OptionalDouble.of(12)))))))
                .isEmpty();
        assertThat(grades(oneLineLoaded(electrical(it -> it.source(generator(36, OptionalDouble.of(9)))))))
                .containsExactly(Grade.BREAKS);
        assertThat(grades(oneLineLoaded(electrical(it -> it.source(generator(36, OptionalDouble.empty()))))))
                .containsExactly(Grade.EXCEEDS_RECOMMENDATION);
        assertThat(grades(oneLineLoaded(electrical(it -> it.source(generator(35, OptionalDouble.empty()))))))
                .containsExactly(Grade.BREAKS);
        assertThat(grades(oneLineLoaded(electrical(it -> it.source(generator(45.1, OptionalDouble.empty()))))))
                .isEmpty();
    }

    @Test
    void holdsLinesToWhatTheProjectAllows() {
        // At supply and panel: imbalance 200 %, I2/I1 and I0/I1 100 %
        assertThat(grades(oneLineLoaded(electrical(it -> it.unbalance(UnbalanceLimits.builder()
                        .imbalancePercent(199)
                        .negativeSequencePercent(99)
                        .zeroSequencePercent(99)
                        .build())))))
                .hasSize(6)
                .containsOnly(Grade.BREAKS);
        assertThat(grades(oneLineLoaded(electrical(it -> it.unbalance(UnbalanceLimits.builder()
                        .imbalancePercent(201)
                        .negativeSequencePercent(101)
                        .zeroSequencePercent(101)
                        .build())))))
                .isEmpty();
    }
}
