package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.solver.portfolio.Outcome;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What searches of one project by many seeds came to beside the best. */
public final class SeedsText {
    private SeedsText() {}

    /**
     * @param best seed of the plan that is taken
     * @param asked how many searches were asked for
     * @param found by seed
     * @return empty where one search was asked for
     */
    public static Optional<String> sentence(long best, int asked, Map<Long, Outcome.Found> found) {
        if (asked == 1) {
            return Optional.empty();
        }
        List<Double> kept = kept(found.values());
        String many = "The best of " + Phrase.counted(found.size(), "plan")
                + (found.size() < asked ? " (of " + asked + " asked for)" : "") + " is that of seed " + best + ". ";
        if (kept.isEmpty()) {
            return Optional.of(many + "None keeps every hard rule.");
        }
        String all = kept.size() == found.size() ? "All keep" : kept.size() + " keep";
        return Optional.of(
                many + all + " every hard rule, with objectives from " + Numbers.fixed(kept.get(0), 1) + " to "
                        + Numbers.fixed(kept.get(kept.size() - 1), 1) + ", median "
                        + Numbers.fixed(kept.get((kept.size() - 1) / 2), 1) + "."
                        + AnotherTryText.of(kept).map(text -> " " + text).orElse(""));
    }

    private static List<Double> kept(Collection<Outcome.Found> found) {
        return found.stream()
                .filter(each -> each.assessment().hardRulesBroken() == 0)
                .map(each -> each.metrics().objective())
                .sorted()
                .toList();
    }
}
