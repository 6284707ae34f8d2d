package evenrise.model.rules;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static evenrise.model.rules.Judging.broken;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.PlanBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.plan.BrokenRule;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/**
 * Rules on what comes on when. Load X is on board BX, Y on BY, each on output 1, so that it comes on at its board's start
 * delay.
 */
class SequenceRulesTest {
    private static ProjectBuilder project(LoadBuilder x, LoadBuilder y) {
        return aProject()
                .boardTypes(aBoardType().startDelaySeconds(0, 3.999, 3.9996, 4, 7, 7.499, 7.4996, 7.5))
                .boards(aBoard("BX"), aBoard("BY"))
                .loads(x, y);
    }

    private static PlanBuilder on(double x, double y) {
        return aPlan().board("BX", x, 1)
                .board("BY", y, 1)
                .assignments(
                        anAssignment("X").at("P1", 1).on("BX", 1),
                        anAssignment("Y").at("P1", 2).on("BY", 1));
    }

    @Nested
    class ProcessingFirst {
        private final ProjectBuilder amplifier =
                project(aLoad("X").processing().settleSeconds(3.5), aLoad("Y").amplifier());
        private final ProjectBuilder auxiliary =
                project(aLoad("X").processing().settleSeconds(3.5), aLoad("Y").auxiliary());

        @Test
        void isKeptByAnAmplifierExactlyWhenProcessingIsSettled() {
            assertThat(broken("processing-first", amplifier, on(4, 7.5))).isEmpty();
        }

        @Test
        void allowsLessThanHalfAMillisecond() {
            assertThat(broken("processing-first", amplifier, on(4, 7.4996))).isEmpty();
        }

        @Test
        void refusesAnAmplifierAMillisecondBefore() {
            assertThat(broken("processing-first", amplifier, on(4, 7.499))).hasSize(1);
        }

        @Test
        void saysWhatIsWrongAndHowToCureIt() {
            assertThat(broken("processing-first", amplifier, on(4, 4)))
                    .containsExactly("amplifier 'Y' comes on at 4 s on board 'BY', but processing is settled only at"
                            + " 7.5 s (load 'X'). Maybe give board 'BY' a longer start delay, or move the load to a"
                            + " later output.");
        }

        @Test
        void letsAnAuxiliaryLoadComeOnWhileProcessingSettles() {
            assertThat(broken("processing-first", auxiliary, on(4, 4))).isEmpty();
        }

        @Test
        void refusesAnAuxiliaryLoadBeforeTheLastProcessingLoad() {
            assertThat(broken("processing-first", auxiliary, on(4, 3.999)))
                    .singleElement()
                    .asString()
                    .contains("auxiliary load 'Y' comes on at 3.999 s", "processing load 'X'", "4 s", "Maybe");
        }
    }

    @Nested
    class AmplifiersLast {
        private final ProjectBuilder project =
                project(aLoad("X").auxiliary().settleSeconds(3.5), aLoad("Y").amplifier());

        @Test
        void isKeptTogetherWithTheLastAuxiliaryLoad() {
            assertThat(broken("amplifiers-last", project, on(4, 4))).isEmpty();
            assertThat(broken("amplifiers-last", project, on(4, 3.9996))).isEmpty();
        }

        @Test
        void refusesAnAmplifierBefore() {
            assertThat(broken("amplifiers-last", project, on(4, 3.999)))
                    .containsExactly("amplifier 'Y' comes on at 3.999 s on board 'BY', but the last auxiliary load 'X'"
                            + " comes on only at 4 s. Maybe give board 'BY' a longer start delay, or move the load to"
                            + " a later output.");
        }

        @Test
        void leavesProcessingFree() {
            ProjectBuilder processing =
                    project(aLoad("X").auxiliary(), aLoad("Y").processing());

            assertThat(broken("amplifiers-last", processing, on(4, 0))).isEmpty();
        }
    }

    @Nested
    class Order {
        private final ProjectBuilder project = project(
                aLoad("X").amplifier().settleSeconds(3.5),
                aLoad("Y").amplifier().comesAfter("X"));

        @Test
        void isKeptExactlyWhenTheEarlierLoadIsSettled() {
            assertThat(broken("order", project, on(4, 7.5))).isEmpty();
            assertThat(broken("order", project, on(4, 7.4996))).isEmpty();
        }

        @Test
        void refusesAMillisecondBefore() {
            assertThat(broken("order", project, on(4, 7.499)))
                    .containsExactly("amplifier 'Y' comes on at 7.499 s on board 'BY', but load 'X', which it comes"
                            + " after, is settled only at 7.5 s. Maybe give board 'BY' a longer start delay, or move"
                            + " the load to a later output.");
        }

        @Test
        void waitsForLoadsWithoutAnOutput() {
            PlanBuilder plan = aPlan().board("BX", 4, 1)
                    .board("BY", 0, 1)
                    .assignments(
                            anAssignment("X").at("P1", 1),
                            anAssignment("Y").at("P1", 2).on("BY", 1));

            Verdict verdict = Judging.verdict(project, plan);

            assertThat(verdict.violations()).extracting(BrokenRule::rule).containsExactly("output");
        }
    }

    @Nested
    class Duration {
        private final ProjectBuilder limited = project(aLoad("X"), aLoad("Y"));

        @Test
        void isKeptExactlyAtTheLimit() {
            assertThat(broken("duration", limited.maxDurationSeconds(7.4996), on(0, 7.4996)))
                    .isEmpty();
            assertThat(broken("duration", limited.maxDurationSeconds(7.4996), on(0, 7.5)))
                    .as("0.4 ms over")
                    .isEmpty();
        }

        @Test
        void refusesMore() {
            assertThat(broken("duration", limited.maxDurationSeconds(7), on(0, 7.5)))
                    .containsExactly("the sequence takes 7.5 s, allowed are 7 s; load 'Y' on board 'BY' comes on"
                            + " last. Maybe shorten that board's step or start delay, or let more boards run in"
                            + " parallel.");
        }

        @Test
        void isKeptByAnyDurationWhereThereIsNoLimit() {
            assertThat(broken("duration", project(aLoad("X"), aLoad("Y")), on(0, 7.5)))
                    .isEmpty();
        }
    }
}
