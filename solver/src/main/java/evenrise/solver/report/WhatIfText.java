package evenrise.solver.report;

import evenrise.model.answer.Supposition;
import evenrise.model.contract.Phrase;
import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Metrics;
import evenrise.model.rules.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** What became of a plan of a project as it would be, for a screen. */
public final class WhatIfText {
    private static final int PLACES_A_RULE = 5;

    private WhatIfText() {}

    /** @param impossible what no plan of that project can keep */
    public static List<String> lines(
            List<Supposition> suppositions, Verdict before, Evaluation after, List<String> impossible, Paint paint) {
        List<List<String>> sections = new ArrayList<>();
        Section answer = new Section(
                paint,
                "Supposed: " + suppositions.stream().map(Supposition::words).collect(Collectors.joining(", and ")));
        int broken = after.verdict().violations().size();
        if (broken == 0) {
            answer.text(
                    Tone.GOOD,
                    "A plan that keeps every rule was found. "
                            + moved(after.verdict().metrics()));
        } else if (impossible.isEmpty()) {
            answer.text(
                    Tone.BAD,
                    "No plan that keeps every rule was found in this time, which proves nothing; the best breaks rules"
                            + " in " + Phrase.counted(broken, "place") + ". "
                            + moved(after.verdict().metrics()));
        } else {
            answer.text(Tone.BAD, "No plan can keep every rule:");
            impossible.forEach(answer::item);
        }
        if (suppositions.stream().anyMatch(Supposition.Added.class::isInstance)) {
            answer.text(
                    Tone.BAD,
                    "The inrush of a load that is added is taken as none: every peak below errs low, and a limit"
                            + " on it may be broken all the same. Put the load into the project with its inrush to know.");
        }
        sections.add(answer.lines());
        sections.add(figures(before.metrics(), after.verdict().metrics(), paint));
        if (broken > 0) {
            sections.add(BrokenRules.folded(after.verdict().violations(), after.project(), PLACES_A_RULE, paint));
        }
        sections.add(CautionText.lines(Cautions.ALL, paint));
        return Sections.joined(sections);
    }

    private static String moved(Metrics metrics) {
        return "From the plan as it is, "
                + Phrase.counted(metrics.movedBreakers().orElse(0), "breaker") + " and "
                + Phrase.counted(metrics.movedLeads().orElse(0), "lead") + " move, and "
                + Phrase.counted(metrics.movedSettings().orElse(0), "setting") + " change.";
    }

    private static List<String> figures(Metrics was, Metrics is, Paint paint) {
        Table table = new Table()
                .words("Figure")
                .number("Now")
                .number("Then")
                .number("Change")
                .words("Unit");
        row(table, "Peak inrush at nominal voltage", was.peakInrushAmps(), is.peakInrushAmps(), "A");
        row(table, "Imbalance of the supply", was.supplyImbalancePercent(), is.supplyImbalancePercent(), "%");
        row(
                table,
                "Imbalance of the worst panel",
                was.worstPanelImbalancePercent(),
                is.worstPanelImbalancePercent(),
                "%");
        row(table, "Neutral current of the supply", was.supplyNeutralAmps(), is.supplyNeutralAmps(), "A");
        row(table, "Last switch-on", was.durationSeconds(), is.durationSeconds(), "s");
        row(table, "Objective", was.objective(), is.objective(), "");
        return new Section(paint, "What it costs").table(table).lines();
    }

    private static void row(Table table, String figure, double was, double is, String unit) {
        table.row(figure, Numbers.fixed(was, 2), Numbers.fixed(is, 2), ChangeWords.signed(is - was), unit);
    }
}
