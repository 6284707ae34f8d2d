package evenrise.solver.portfolio;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Assessment;
import evenrise.model.plan.Metrics;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class LotTest {
    private static Outcome outcome(int seed, double objective, int rules, int limits) {
        Metrics metrics = Metrics.builder().objective(objective).build();
        Assessment assessment = Assessment.builder()
                .headline("judged")
                .hardRulesBroken(rules)
                .limitsBroken(limits)
                .withoutPlaceAmps(0)
                .build();
        return new Outcome(
                "hall",
                "as-is",
                seed,
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.of(new Outcome.Found(metrics, assessment, OptionalDouble.empty())),
                Optional.empty());
    }

    private static Lot lot(double... objectives) {
        List<Outcome> outcomes = new ArrayList<>();
        for (int i = 0; i < objectives.length; i++) {
            outcomes.add(outcome(i, objectives[i], 0, 0));
        }
        return Lot.of(outcomes).get(0);
    }

    @Test
    void ranksPlansByObjective() {
        Lot lot = lot(30, 10, 40, 20);

        assertThat(lot.best().orElseThrow().objective()).isEqualTo(10);
        assertThat(lot.median().orElseThrow().objective()).isEqualTo(20);
        assertThat(lot.worst().orElseThrow().objective()).isEqualTo(40);
    }

    @Test
    void takesNoPlanThatBreaksARule() {
        Lot lot = Lot.of(List.of(outcome(1, 5, 1, 0), outcome(2, 9, 0, 0))).get(0);

        assertThat(lot.best().orElseThrow().seed()).isEqualTo(2);
        assertThat(lot.sound()).isEqualTo(1);
    }

    @Test
    void prefersAPlanThatBreaksNoLimitEither() {
        Lot lot = Lot.of(List.of(outcome(1, 5, 0, 1), outcome(2, 9, 0, 0))).get(0);

        assertThat(lot.best().orElseThrow().seed()).isEqualTo(2);
        assertThat(lot.kept()).hasSize(2);
    }

    @Test
    void hasNoBestWhereEveryPlanBreaksARule() {
        Lot lot = Lot.of(List.of(outcome(1, 5, 2, 0))).get(0);

        assertThat(lot.best()).isEmpty();
        assertThat(lot.median()).isEmpty();
        assertThat(lot.outliers()).isEmpty();
    }

    /** Quartiles of 1, 2, 3, 4, 5 and 20 by type 7: 2.25 and 4.75; the fence is at 4.75 + 1.5 · 2.5 = 8.5. */
    @Test
    void namesWhatStandsApart() {
        assertThat(lot(1, 2, 3, 4, 5, 20).outliers())
                .extracting(Outcome::objective)
                .containsExactly(20.0);
        assertThat(lot(1, 2, 3, 4, 5, 8.5).outliers()).isEmpty();
        assertThat(lot(1, 2, 3, 20).outliers()).isEmpty();
    }

    @Test
    void partsProjectsAndVariants() {
        List<Outcome> outcomes = List.of(
                outcome(1, 5, 0, 0),
                new Outcome(
                        "hall",
                        "less",
                        1,
                        Optional.empty(),
                        OptionalDouble.empty(),
                        Optional.empty(),
                        Optional.of("why")),
                outcome(2, 6, 0, 0));

        List<Lot> lots = Lot.of(outcomes);

        assertThat(lots).extracting(Lot::variant).containsExactly("as-is", "less");
        assertThat(lots.get(0).outcomes()).hasSize(2);
        assertThat(lots.get(1).failed()).hasSize(1);
    }
}
