package evenrise.solver.app;

import evenrise.model.file.PlanFile;
import evenrise.solver.portfolio.Outcome;
import java.util.Locale;
import java.util.Optional;

/** Plans as the answers of jobs. */
final class FoundPlans {
    static final KeptAnswers.Words<Outcome.Found> WORDS = new KeptAnswers.Words<>("plan", FoundPlans::words);

    private FoundPlans() {}

    /** Empty where the bytes are no judged plan. */
    static Optional<Outcome.Found> read(byte[] answer) {
        return PlanFile.read(answer, "an answer")
                .value()
                .filter(plan -> plan.metrics().isPresent() && plan.assessment().isPresent())
                .map(Outcome.Found::of);
    }

    private static String words(Outcome.Found figures) {
        return String.format(
                Locale.ROOT,
                "objective %.1f  peak %.1f A  %s",
                figures.metrics().objective(),
                figures.metrics().peakInrushAmps(),
                figures.assessment().headline());
    }
}
