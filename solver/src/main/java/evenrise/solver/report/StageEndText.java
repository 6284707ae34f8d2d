package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Finding;
import evenrise.model.plan.Grade;
import java.util.ArrayList;
import java.util.List;

/** How the plant stands after a stage: whole, or which limits it breaks, each by name. */
final class StageEndText {
    private static final int MOST_SHOWN = 20;

    private StageEndText() {}

    /** @param after the plant as the stage leaves it */
    static void into(Section end, Evaluation after, boolean isLast) {
        List<Finding> broken = new ArrayList<>(after.verdict().violations());
        after.review().remarks().stream()
                .filter(remark -> remark.grade() == Grade.BREAKS)
                .forEach(broken::add);
        if (broken.isEmpty()) {
            end.text("The plant is whole and may run" + (isLast ? "." : "; the next stage can wait.")
                    + " It keeps every hard rule, and nothing that the electrical review could check breaks a limit.");
            return;
        }
        end.text("The plant is NOT whole: " + Phrase.counted(broken.size(), "limit")
                + (broken.size() == 1 ? " is" : " are") + " broken. Whoever is responsible for it decides whether it"
                + " runs like this" + (isLast ? ":" : " until the next stage:"));
        List<Folded<Finding>> folded = Folded.of(broken, after.project());
        folded.stream().limit(MOST_SHOWN).forEach(each -> end.item(each.first().check() + ": " + each.text()));
        if (folded.size() > MOST_SHOWN) {
            end.item("and " + BrokenRules.count(folded.subList(MOST_SHOWN, folded.size()))
                    + " more; audit the plan to see them");
        }
    }
}
