package evenrise.solver.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenrise.solver.engine.Progress;
import java.time.Duration;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EarlyEndTest {
    private final AtomicInteger stops = new AtomicInteger();

    @Nested
    class AtAProvenGap {
        private final EarlyEnd end =
                new EarlyEnd(new Patience(OptionalDouble.of(2), Optional.empty()), stops::incrementAndGet);

        @Test
        void goesOnWhileTheGapIsWider() {
            end.take(progress(1, 100, 0, 97.99));

            assertThat(stops).hasValue(0);
            assertThat(end.why()).isEmpty();
        }

        @Test
        void endsAtTheGapItselfAndSaysSo() {
            end.take(progress(1, 100, 0, 98));

            assertThat(stops).hasValue(1);
            assertThat(end.why()).contains("the best plan is proven to be within 2 % of the best there could be");
        }

        @Test
        void neverSaysLessThanTheGap() {
            end.take(progress(1, 100, 0, 98.0099));

            assertThat(end.why().orElseThrow()).contains("within 2 %");
        }

        @Test
        void endsOnce() {
            end.take(progress(1, 100, 0, 99));
            end.take(progress(2, 100, 0, 99.5));

            assertThat(stops).hasValue(1);
        }

        @Test
        void goesOnWhileARuleIsBroken() {
            end.take(progress(1, 100, 1, 99.9));

            assertThat(stops).hasValue(0);
        }

        @Test
        void goesOnWhileNothingIsProven() {
            end.take(progress(1, 100, 0, 0));

            assertThat(stops).hasValue(0);
        }
    }

    @Nested
    class WithoutGain {
        private final EarlyEnd end = new EarlyEnd(
                new Patience(OptionalDouble.empty(), Optional.of(Duration.ofSeconds(10))), stops::incrementAndGet);

        @Test
        void waitsForAFirstPlan() {
            end.at(1000);

            assertThat(stops).hasValue(0);
        }

        @Test
        void endsSoLongAfterTheLastGainAndNoSooner() {
            end.take(progress(5, 100, 0, 0));

            end.at(14.99);
            assertThat(stops).hasValue(0);
            end.at(15);
            assertThat(stops).hasValue(1);
            assertThat(end.why()).contains("nothing better was found for 10 s");
        }

        @Test
        void aRuleLessIsAGainWhateverItCosts() {
            end.take(progress(1, 100, 2, 0));
            end.take(progress(9, 300, 1, 0));

            end.at(12);

            assertThat(stops).hasValue(0);
        }

        @Test
        void theLastMilliamperesAreNone() {
            end.take(progress(1, 100, 0, 0));
            end.take(progress(9, 99.995, 0, 0));

            end.at(11);

            assertThat(stops).hasValue(1);
        }

        @Test
        void manySmallFallsAreAGainTogether() {
            end.take(progress(1, 100, 0, 0));
            end.take(progress(8, 99.995, 0, 0));
            end.take(progress(9, 99.985, 0, 0));

            end.at(12);

            assertThat(stops).hasValue(0);
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.1, 100.1, Double.NaN, Double.POSITIVE_INFINITY})
    void aGapThatIsNoneIsRefused(double percent) {
        assertThatThrownBy(() -> new Patience(OptionalDouble.of(percent), Optional.empty()))
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static Progress progress(double seconds, double objective, int broken, double proven) {
        return new Progress(seconds, 1, objective, objective, 0, broken, proven);
    }
}
