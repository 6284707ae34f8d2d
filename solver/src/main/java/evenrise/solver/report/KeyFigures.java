package evenrise.solver.report;

import evenrise.model.plan.EventPeak;
import evenrise.model.plan.Metrics;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Tolerances;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A plan's figures, one a line, each beside the limit that the project sets it. */
final class KeyFigures {
    private KeyFigures() {}

    /**
     * @param boundAmps what no plan of the project can stay below
     * @param eventPeaks what the supply peaks at when something happens
     * @param plan the plan as it was finished, with its gap; empty where it comes from a file that may say anything
     */
    static List<String> lines(
            Project project,
            Metrics metrics,
            List<EventPeak> eventPeaks,
            double boundAmps,
            Optional<Plan> plan,
            Paint paint) {
        OptionalDouble inrushLimit = project.supply().inrushLimitAmps();
        double neutralLimit = project.supply().ratedAmps() * project.supply().neutralFactor();
        Table table = new Table()
                .words("Figure")
                .number("Value")
                .words("Unit")
                .number("Limit")
                .words("Where");
        table.row(
                limited(metrics.peakInrushAmps(), inrushLimit, Tolerances.AMPS),
                "Peak inrush of the supply",
                Numbers.amps(metrics.peakInrushAmps()),
                "A peak",
                Numbers.amps(inrushLimit),
                "phase " + metrics.peakPhase() + " at " + Numbers.seconds(metrics.peakAtSeconds()) + " s");
        eventPeaks.forEach(peak -> EventPeakRow.add(table, project, peak));
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
                Numbers.fixed(boundAmps, 2),
                "A equiv.",
                Numbers.NONE,
                plan.map(KeyFigures::gap).orElse("proven, not always tight"));
        return new Section(paint, "Figures (peaks are upper bounds at nominal voltage)")
                .table(table)
                .lines();
    }

    private static String gap(Plan plan) {
        if (plan.optimal()) {
            return "optimal: no plan is better";
        }
        return plan.gapPercent().isPresent()
                ? "gap " + Numbers.fixed(plan.gapPercent().getAsDouble(), 2) + " %"
                : "proven, not always tight";
    }

    private static Tone limited(double value, OptionalDouble limit, double tolerance) {
        return limit.isPresent() && value > limit.getAsDouble() + tolerance ? Tone.BAD : Tone.PLAIN;
    }
}
