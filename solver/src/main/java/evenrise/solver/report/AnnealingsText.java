package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.solver.portfolio.AnotherTry;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** Whether more time would pay, from what the annealings of a search have come to. */
public final class AnnealingsText {
    private AnnealingsText() {}

    /**
     * @param ends objectives in which annealings have ended that kept every rule
     * @return empty where none has ended
     */
    public static Optional<String> sentence(List<Double> ends) {
        if (ends.isEmpty()) {
            return Optional.empty();
        }
        if (ends.size() < AnotherTry.FEWEST) {
            return Optional.of(Phrase.counted(ends.size(), "annealing")
                    + " ended without a broken rule: too few to tell whether more time pays.");
        }
        return Optional.of(ends.size() + " annealings ended at " + Numbers.fixed(Collections.min(ends), 1) + " to "
                + Numbers.fixed(Collections.max(ends), 1) + ". By their spread, another lowers the least of these by "
                + Numbers.fixed(AnotherTry.gain(ends).orElseThrow(), 2) + " on average.");
    }
}
