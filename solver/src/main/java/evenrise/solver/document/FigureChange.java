package evenrise.solver.document;

import evenrise.model.plan.Metrics;
import evenrise.solver.report.NodeUse;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * A figure before and now; empty where the place was not there, or is no longer.
 */
public record FigureChange(String place, String figure, String unit, OptionalDouble before, OptionalDouble now) {
    /** Which figure of which place. */
    private record Of(String place, String figure, String unit) {}

    /** As finely as figures are printed. */
    private static final double SAME = 0.005;

    static DocumentTable<FigureChange> table(PlanState before, PlanState now) {
        return DocumentTable.of(
                "figures-before",
                "Figures before and now",
                "All of the supply; of panels and distribution points those that changed. Running and neutral currents are rms, of the"
                        + " fullest line; peaks instantaneous, by the envelopes at nominal voltage, while the sequence"
                        + " runs.",
                List.of(
                        Column.text("place", "Place", FigureChange::place),
                        Column.text("figure", "Figure", FigureChange::figure),
                        Column.text("unit", "Unit", FigureChange::unit),
                        Column.number("before", "Before", "", FigureChange::before, ""),
                        Column.number("now", "Now", "", FigureChange::now, ""),
                        Column.number("change", "Change", "", FigureChange::change, "")
                                .calculated(row -> row.change().isPresent() ? "[now]-[before]" : "")),
                of(figures(before), figures(now)));
    }

    private static List<FigureChange> of(Map<Of, Double> had, Map<Of, Double> has) {
        Map<Of, Double> all = new LinkedHashMap<>(has);
        had.forEach(all::putIfAbsent);
        return all.keySet().stream()
                .map(of -> new FigureChange(of.place(), of.figure(), of.unit(), at(had, of), at(has, of)))
                .filter(each -> each.place().equals("supply") || each.isOther())
                .toList();
    }

    private static OptionalDouble at(Map<Of, Double> figures, Of of) {
        Double value = figures.get(of);
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    private static Map<Of, Double> figures(PlanState state) {
        Map<Of, Double> figures = new LinkedHashMap<>();
        Metrics metrics = state.evaluation().verdict().metrics();
        figures.put(new Of("supply", "last switch-on", "s"), metrics.durationSeconds());
        figures.put(new Of("supply", "boards in use", ""), (double) metrics.boardsUsed());
        figures.put(new Of("supply", "hard rules broken", ""), (double) metrics.hardViolations());
        for (NodeUse use : NodeUse.of(state.layout())) {
            figures.put(new Of(use.node(), "peak", "A"), use.greatestPeakAmps());
            figures.put(
                    new Of(use.node(), "running current", "A"),
                    Collections.max(use.runningAmps().values()));
            figures.put(new Of(use.node(), "neutral current", "A"), use.neutralAmps());
            figures.put(new Of(use.node(), "imbalance", "%"), use.imbalancePercent());
        }
        return figures;
    }

    OptionalDouble change() {
        return before.isPresent() && now.isPresent()
                ? OptionalDouble.of(now.getAsDouble() - before.getAsDouble())
                : OptionalDouble.empty();
    }

    private boolean isOther() {
        return change().isPresent() ? Math.abs(change().getAsDouble()) >= SAME : !Objects.equals(before, now);
    }
}
