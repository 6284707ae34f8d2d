package evenrise.solver.report;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Metrics;
import evenrise.model.plan.PeakBasis;
import evenrise.model.plan.RangePeak;
import evenrise.model.project.Project;
import evenrise.model.rules.Proof;
import evenrise.model.rules.Tolerances;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** A plan's figures, one a line, each beside the limit that the project sets it. */
final class KeyFigures {
    private KeyFigures() {}

    /** @param named of the loads that state too little, so many by name */
    static List<String> lines(Evaluation evaluation, int named, Paint paint) {
        Project project = evaluation.project();
        Metrics metrics = evaluation.verdict().metrics();
        PeakBasis basis = evaluation.layout().peakBasis();
        RangePeak peak = basis.supply();
        OptionalDouble inrushLimit = project.supply().inrushLimitAmps();
        double neutralLimit = project.supply().neutralAmps();
        Table table = new Table()
                .words("Figure")
                .number("Value")
                .words("Unit")
                .number("Limit")
                .words("Where");
        table.row(
                limited(metrics.peakInrushAmps(), inrushLimit, Tolerances.AMPS),
                "Peak inrush " + PeakWords.NOMINAL,
                Numbers.amps(metrics.peakInrushAmps()),
                "A peak",
                Numbers.amps(inrushLimit),
                PeakWords.nominal(peak) + ", phase " + metrics.peakPhase() + " at "
                        + Numbers.seconds(metrics.peakAtSeconds()) + " s");
        table.row(
                limited(peak.rangeAmps(), inrushLimit, Tolerances.AMPS),
                "Peak inrush " + PeakWords.range(basis),
                Numbers.amps(peak.rangeAmps()),
                "A peak",
                Numbers.amps(inrushLimit),
                PeakWords.overRange(peak) + ", phase " + peak.rangePhase() + " at "
                        + Numbers.seconds(peak.rangeAtSeconds()) + " s");
        evaluation.layout().eventPeaks().get(0).forEach(event -> EventPeakRow.add(table, project, event, basis));
        table.row("Imbalance of the supply", Numbers.percent(metrics.supplyImbalancePercent()), "%", Numbers.NONE, "");
        table.row(
                "Imbalance of the worst panel",
                Numbers.percent(metrics.worstPanelImbalancePercent()),
                "%",
                Numbers.NONE,
                "");
        table.row(
                limited(metrics.supplyNeutralAmps(), OptionalDouble.of(neutralLimit), Tolerances.AMPS),
                "Neutral current of the supply",
                Numbers.amps(metrics.supplyNeutralAmps()),
                "A rms",
                Numbers.amps(neutralLimit),
                "");
        further(metrics, table);
        table.row(
                limited(metrics.durationSeconds(), project.maxDurationSeconds(), Tolerances.SECONDS),
                "Sequence, to the last switch-on",
                Numbers.seconds(metrics.durationSeconds()),
                "s",
                Numbers.seconds(project.maxDurationSeconds()),
                "");
        table.row(
                "Boards in use",
                Integer.toString(metrics.boardsUsed()),
                "",
                Integer.toString(project.boards().size()),
                "");
        table.row("Objective", Numbers.fixed(metrics.objective(), 2), "A equiv.", Numbers.NONE, "less is better");
        table.row(
                "Proven lower bound of the objective",
                Numbers.fixed(evaluation.bounds().objective(), 2),
                "A equiv.",
                Numbers.NONE,
                gap(evaluation.proof()));
        Section section = new Section(paint, "Figures").table(table);
        PeakWords.notes(basis, named).forEach(section::text);
        evaluation.withoutPlace().ifPresent(what -> section.text(Tone.BAD, "All of these are " + what + "."));
        return section.lines();
    }

    /** Figures that only some plants have. */
    private static void further(Metrics metrics, Table table) {
        metrics.sourcePeaksAmps()
                .ifPresent(amps -> table.row(
                        "Peaks of the further sources, summed", Numbers.amps(amps), "A peak", Numbers.NONE, ""));
        metrics.worstNodeImbalancePercent()
                .ifPresent(percent -> table.row(
                        "Imbalance, worst distribution point", Numbers.percent(percent), "%", Numbers.NONE, ""));
        counted(table, "Panels that racks spread over, beyond one each", metrics.rackPanels());
        counted(table, "Boards that racks spread over, beyond one each", metrics.rackBoards());
        counted(table, "Rows between the loads of racks", metrics.rackRows());
        counted(table, "Breakers moved", metrics.movedBreakers());
        counted(table, "Leads moved", metrics.movedLeads());
        counted(table, "Settings changed", metrics.movedSettings());
    }

    private static void counted(Table table, String figure, OptionalInt count) {
        count.ifPresent(it -> table.row(figure, Integer.toString(it), "", Numbers.NONE, ""));
    }

    private static String gap(Proof proof) {
        if (proof.isOptimal()) {
            return "optimal: no plan is better";
        }
        return proof.gapPercent().isPresent()
                ? "gap " + Numbers.fixed(proof.gapPercent().getAsDouble(), 2) + " %"
                : "proven, not always tight";
    }

    private static Tone limited(double value, OptionalDouble limit, double tolerance) {
        return limit.isPresent() && value > limit.getAsDouble() + tolerance ? Tone.BAD : Tone.PLAIN;
    }
}
