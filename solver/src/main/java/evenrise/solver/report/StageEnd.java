package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Finding;
import evenrise.model.plan.Grade;
import java.util.ArrayList;
import java.util.List;

/**
 * How the plant stands after a stage: whole, or which limits it breaks, each by name.
 *
 * @param limitsBroken hard rules, and limits of the electrical review
 * @param broken the first of them in words, those that are alike in one line
 */
public record StageEnd(int limitsBroken, String sentence, List<String> broken) {
    private static final int MOST_SHOWN = 20;

    public StageEnd {
        broken = List.copyOf(broken);
    }

    /** @param after the plant as the stage leaves it */
    static StageEnd of(Evaluation after, boolean isLast) {
        List<Finding> broken = new ArrayList<>(after.verdict().violations());
        after.review().remarks().stream()
                .filter(remark -> remark.grade() == Grade.BREAKS)
                .forEach(broken::add);
        if (broken.isEmpty()) {
            return new StageEnd(
                    0,
                    "The plant is whole and may run" + (isLast ? "." : "; the next stage can wait.")
                            + " It keeps every hard rule, and nothing that the electrical review could check breaks a"
                            + " limit.",
                    List.of());
        }
        List<Folded<Finding>> folded = Folded.of(broken, after.project());
        List<String> lines = new ArrayList<>(folded.stream()
                .limit(MOST_SHOWN)
                .map(each -> each.first().check() + ": " + each.text())
                .toList());
        if (folded.size() > MOST_SHOWN) {
            lines.add("and " + BrokenRules.count(folded.subList(MOST_SHOWN, folded.size()))
                    + " more; audit the plan to see them");
        }
        return new StageEnd(
                broken.size(),
                "The plant is NOT whole: " + Phrase.counted(broken.size(), "limit")
                        + (broken.size() == 1 ? " is" : " are")
                        + " broken. Whoever is responsible for it decides whether it runs like this"
                        + (isLast ? ":" : " until the next stage:"),
                lines);
    }

    public boolean isWhole() {
        return limitsBroken == 0;
    }

    /** In a table: {@code 2 limits broken}. */
    public String inShort() {
        return isWhole() ? "whole" : Phrase.counted(limitsBroken, "limit") + " broken";
    }
}
