package evenrise.solver.document;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.evaluation.NodeEvent;
import evenrise.model.plan.Assessment;
import evenrise.model.plan.CheckCount;
import evenrise.solver.report.AssessmentText;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What all judges together say of a plan, and how many places each electrical check judged. */
final class AssessmentTable {
    private AssessmentTable() {}

    static DocumentTable<JudgedCount> of(Evaluation evaluation) {
        Assessment all = evaluation.assessment();
        List<JudgedCount> rows = new ArrayList<>();
        rows.add(new JudgedCount("hard rules broken", all.hardRulesBroken(), "places"));
        rows.add(new JudgedCount("electrical limits broken", all.limitsBroken(), ""));
        rows.add(new JudgedCount("peaks of events over an inrush limit", all.eventsOverLimit(), over(evaluation)));
        rows.add(new JudgedCount("electrical checks made", all.checksMade(), "each check and place counted"));
        rows.add(new JudgedCount("electrical checks not made", all.checksNotMade(), "each check and place counted"));
        for (CheckCount check : evaluation.review().checks()) {
            rows.add(new JudgedCount("check " + check.check(), check.made(), "not made: " + check.notMade()));
        }
        rows.add(new JudgedCount("fields guessed", all.guessedFields(), ""));
        rows.add(new JudgedCount("loads without stated inrush", all.loadsWithoutInrush(), ""));
        rows.add(new JudgedCount(
                "loads without a place",
                all.loadsWithoutPlace(),
                evaluation.withoutPlace().map(what -> "all figures are " + what).orElse("")));
        return DocumentTable.of(
                "assessment",
                "Assessment",
                (all.isBroken() ? AssessmentText.NOT_TO_BE_BUILT + " " : "") + AssessmentText.capital(all.headline()),
                List.of(
                        Column.text("what", "What", JudgedCount::what),
                        Column.count("count", "Count", JudgedCount::count),
                        Column.text("of", "Of what", JudgedCount::of)),
                rows);
    }

    private static String over(Evaluation evaluation) {
        List<String> each = new ArrayList<>();
        for (NodeEvent event : evaluation.eventsOverLimit()) {
            each.add(String.format(
                    Locale.ROOT,
                    "%s, %s: %.1f A of %s",
                    event.node(),
                    event.peak().event().name().toLowerCase(Locale.ROOT).replace('_', ' '),
                    event.peak().peakInrushAmps(),
                    Unrounded.amps(event.limitAmps())));
        }
        return String.join("; ", each);
    }
}
