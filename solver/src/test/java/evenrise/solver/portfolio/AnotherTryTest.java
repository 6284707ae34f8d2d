package evenrise.solver.portfolio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class AnotherTryTest {
    private static final int ROUNDS = 100_000;

    @Test
    void isThePartOfTheDistanceBetweenTheTwoBest() {
        // (303.0 − 301.5) / 5
        assertThat(AnotherTry.gain(List.of(304.0, 301.5, 310.0, 303.0, 303.5)).orElseThrow())
                .isCloseTo(0.3, within(1e-9));
    }

    @Test
    void isNotToldOfFew() {
        assertThat(AnotherTry.gain(List.of(304.0, 301.5, 310.0, 303.0))).isEmpty();
    }

    @Test
    void isNothingWhereTwoHaveFoundTheSame() {
        assertThat(AnotherTry.gain(List.of(7.0, 7.0, 9.0, 9.0, 9.0))).hasValue(0);
    }

    static Stream<Arguments> kindsOfChance() {
        return Stream.of(
                Arguments.of("even", (ToDoubleFunction<Random>) Random::nextDouble),
                Arguments.of("normal", (ToDoubleFunction<Random>) Random::nextGaussian),
                Arguments.of("long towards the worse", (ToDoubleFunction<Random>)
                        random -> -Math.log(1 - random.nextDouble())),
                Arguments.of("long towards the better", (ToDoubleFunction<Random>)
                        random -> Math.log(1 - random.nextDouble())));
    }

    /** On average what the last try has brought, and no less than what the next one brings. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("kindsOfChance")
    void isCalibratedWhateverTheChances(String name, ToDoubleFunction<Random> chance) {
        Random random = new Random(11);
        double told = 0;
        double last = 0;
        double next = 0;
        for (int round = 0; round < ROUNDS; round++) {
            List<Double> tries = new ArrayList<>();
            for (int i = 0; i < 8; i++) {
                tries.add(chance.applyAsDouble(random));
            }
            double least = Collections.min(tries);
            told += AnotherTry.gain(tries).orElseThrow();
            last += Collections.min(tries.subList(0, 7)) - least;
            next += Math.max(0, least - chance.applyAsDouble(random));
        }

        assertThat(told / last).isCloseTo(1, within(0.05));
        assertThat(next).isLessThan(told);
    }
}
