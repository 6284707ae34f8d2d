package evenrise.solver.report;

import evenrise.model.plan.EventPeak;
import evenrise.model.plan.PeakBasis;
import evenrise.model.project.Project;
import evenrise.model.rules.Tolerances;
import java.util.OptionalDouble;

/** The peak of the supply when something happens, as a row beside the normal peak. */
final class EventPeakRow {
    private EventPeakRow() {}

    /** Adds it with the supply's limit, where the project asks that this holds for the event, too. */
    static void add(Table table, Project project, EventPeak peak, PeakBasis basis) {
        boolean holds = project.behaviourOrDefault().inrushLimitHoldsFor().contains(peak.event());
        OptionalDouble limit = holds ? project.supply().inrushLimitAmps() : OptionalDouble.empty();
        boolean isOver = limit.isPresent() && peak.peakInrushAmps() > limit.getAsDouble() + Tolerances.AMPS;
        table.row(
                isOver ? Tone.BAD : Tone.PLAIN,
                "  " + what(peak) + ", nominal",
                Numbers.amps(peak.peakInrushAmps()),
                "A peak",
                Numbers.amps(limit),
                PeakWords.event(basis) + ", phase " + peak.peakPhase()
                        + peak.board().map(id -> ", " + id).orElse(""));
    }

    /** When it happens. */
    static String what(EventPeak peak) {
        return switch (peak.event()) {
            case RETURN -> "show runs: when the mains return";
            case RELEASE -> "show runs: when an emergency is released";
            case BOARD_FAILURE -> "show runs: when the worst board fails";
            case DIP -> "show runs: when a deep dip passes";
        };
    }
}
