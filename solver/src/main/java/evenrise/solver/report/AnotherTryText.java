package evenrise.solver.report;

import evenrise.solver.portfolio.AnotherTry;
import java.util.List;
import java.util.Optional;

/** Whether another seed would pay, in a sentence. */
final class AnotherTryText {
    private AnotherTryText() {}

    /**
     * @param objectives of plans that keep every rule, by seeds alike
     * @return empty where they are too few to tell
     */
    static Optional<String> of(List<Double> objectives) {
        return AnotherTry.gain(objectives).isEmpty()
                ? Optional.empty()
                : Optional.of("By their spread, another seed lowers the least by "
                        + Numbers.fixed(AnotherTry.gain(objectives).getAsDouble(), 2) + " on average, at most.");
    }
}
