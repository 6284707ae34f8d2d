package evenrise.solver.document;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Phrase;
import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Assessment;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.CheckCount;
import evenrise.model.plan.Grade;
import evenrise.model.plan.MadeBy;
import evenrise.model.plan.Quantity;
import evenrise.model.project.Electrical;
import evenrise.model.rules.Proof;
import evenrise.solver.report.GuessedField;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** How good a plan is, what it rests on and what nobody has checked. */
final class Quality {
    private static final String DIP_CHECK = "voltage-dip";
    private static final int NAMED_CHECKS = 4;
    private static final String BOUND = "Gap to the proven bound";

    private Quality() {}

    /**
     * The gap to what no plan can stay below, and what was spent on the search. The bound is the one that the plan states:
     * documents prove none anew, which takes long.
     */
    static List<Fact> search(Evaluation evaluation) {
        List<Fact> facts = new ArrayList<>();
        facts.add(
                evaluation.verdict().violations().isEmpty()
                        ? evaluation
                                .layout()
                                .plan()
                                .bounds()
                                .map(Bounds::objective)
                                .filter(bound -> bound > 0)
                                .map(bound -> gap(evaluation.verdict().metrics().objective(), bound))
                                .orElse(new Fact(BOUND, "not known", "the plan states no bound"))
                        : new Fact(BOUND, "not told", "a bound is of plans that keep every rule", true));
        facts.add(evaluation
                .layout()
                .plan()
                .madeBy()
                .map(Quality::spent)
                .orElse(new Fact("Searched", "not stated", "the plan does not say what made it")));
        return facts;
    }

    private static Fact gap(double objective, double bound) {
        Proof proof = Proof.ofWhole(objective, bound);
        String figures = "objective " + Decimals.apart(objective, bound, 1) + ", no plan is below "
                + Decimals.apart(bound, objective, 1) + " (ampere-equivalents), as the plan states";
        return proof.isOptimal()
                ? new Fact("Proven", "the least there is", figures)
                : new Fact(
                        BOUND,
                        Decimals.fixed(proof.gapPercent().getAsDouble(), 1) + " %",
                        figures + "; the best lies between");
    }

    private static Fact spent(MadeBy by) {
        String value = by.movesAllowed().isPresent()
                ? Phrase.counted(by.movesAllowed().getAsLong(), "move")
                : by.timeUsedSeconds().isPresent()
                        ? Decimals.fixed(by.timeUsedSeconds().getAsDouble(), 1) + " s"
                        : "not stated";
        return new Fact(
                "Searched",
                value,
                "seed " + by.seed() + ", "
                        + (by.threads() == 1 ? "one thread" : by.threads() + " threads, the best plan kept"));
    }

    /** Never silent: that nothing is open is said, too. */
    static List<Fact> open(Evaluation evaluation) {
        Assessment all = evaluation.assessment();
        int checks = all.checksMade() + all.checksNotMade();
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact(
                "Checks not made",
                all.checksNotMade() + " of " + checks,
                all.checksNotMade() == 0 ? "" : notMade(evaluation.review().checks()),
                false));
        facts.add(GuessedField.figures(evaluation.project())
                .map(figures -> new Fact(
                        "Guessed",
                        figures,
                        "of " + GuessedField.loads(evaluation.project())
                                + ", stated by nobody: confirm each by a datasheet or on site"))
                .orElse(new Fact("Guessed", "nothing", "")));
        facts.add(new Fact(
                "Loads without stated inrush",
                String.valueOf(all.loadsWithoutInrush()),
                all.loadsWithoutInrush() == 0 ? "" : "no peak is an upper bound"));
        if (all.loadsWithoutPlace() > 0) {
            facts.add(new Fact(
                    "Loads without a place", String.valueOf(all.loadsWithoutPlace()), "no figure counts them", true));
        }
        return facts;
    }

    /** The most first. */
    private static String notMade(List<CheckCount> checks) {
        List<CheckCount> open = checks.stream()
                .filter(check -> check.notMade() > 0)
                .sorted(Comparator.comparingInt(CheckCount::notMade).reversed())
                .toList();
        String named = open.stream()
                .limit(NAMED_CHECKS)
                .map(check -> check.check() + " " + check.notMade())
                .collect(Collectors.joining(", "));
        return open.size() > NAMED_CHECKS ? named + ", others" : named;
    }

    /** The deepest dip of the sequence, and what was said of it; that it was not worked out where no source is known. */
    static String dip(Evaluation evaluation) {
        Optional<Quantity> deepest = evaluation.review().quantities().stream()
                .filter(each -> each.name().equals("deepest dip"))
                .max(Comparator.comparingDouble(Quantity::value));
        if (deepest.isEmpty()) {
            return "Voltage dip while the sequence runs: not worked out, electrical.source is not stated.";
        }
        boolean isJudged = !evaluation
                .project()
                .electrical()
                .map(Electrical::dipCriteria)
                .orElse(List.of())
                .isEmpty();
        long said = evaluation.review().remarks().stream()
                .filter(each -> each.check().equals(DIP_CHECK))
                .filter(each -> each.grade() == Grade.BREAKS || each.grade() == Grade.EXCEEDS_RECOMMENDATION)
                .count();
        return "Voltage dip while the sequence runs: at most "
                + Decimals.fixed(deepest.orElseThrow().value(), 2) + " %, at "
                + deepest.orElseThrow().place()
                + (said > 0
                        ? "; " + Phrase.counted(said, "limit") + " exceeded, see the electrical findings."
                        : isJudged ? "; no limit exceeded." : "; the project names no criterion to hold it against.");
    }
}
