package evenrise.solver.report;

import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.project.Supply;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.PhasePeak;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * The figures of the supply or of one panel beside its limits. A spare below zero is what a limit is exceeded by.
 *
 * @param node the panel's id, or {@link NodeFigures#SUPPLY}
 * @param runningAmps rms, by phase
 * @param runningLimitAmps rating times the continuous fraction, for each phase
 * @param runningSpareAmps of the phase that runs highest
 * @param peaks instantaneous upper bound, by phase
 * @param inrushSpareAmps of the phase that peaks highest
 */
public record NodeSheet(
        String node,
        Map<Phase, Double> runningAmps,
        double meanAmps,
        double deviationAmps,
        double imbalancePercent,
        double runningLimitAmps,
        double runningSpareAmps,
        double neutralAmps,
        double neutralLimitAmps,
        double neutralSpareAmps,
        List<PhasePeak> peaks,
        OptionalDouble inrushLimitAmps,
        OptionalDouble inrushSpareAmps) {

    static NodeSheet of(Project project, NodeFigures figures) {
        Supply supply = project.supply();
        if (figures.node().equals(NodeFigures.SUPPLY)) {
            return of(
                    figures,
                    supply.ratedAmps() * supply.continuousFraction(),
                    supply.ratedAmps() * supply.neutralFactor(),
                    supply.inrushLimitAmps());
        }
        Panel panel = project.panels().stream()
                .filter(each -> each.id().equals(figures.node()))
                .findFirst()
                .orElseThrow();
        return of(
                figures,
                panel.ratedAmps() * supply.continuousFraction(),
                panel.ratedAmps() * panel.neutralFactor(),
                panel.inrushLimitAmps());
    }

    private static NodeSheet of(
            NodeFigures figures, double runningLimit, double neutralLimit, OptionalDouble inrushLimit) {
        Map<Phase, Double> running = figures.runningAmps();
        double highest = running.isEmpty() ? 0 : Collections.max(running.values());
        double mean = running.values().stream()
                .mapToDouble(Double::doubleValue)
                .average()
                .orElse(0);
        double peak =
                figures.peaks().stream().mapToDouble(PhasePeak::amps).max().orElse(0);
        return new NodeSheet(
                figures.node(),
                running,
                mean,
                figures.deviationAmps(),
                figures.imbalancePercent(),
                runningLimit,
                runningLimit - highest,
                figures.neutralAmps(),
                neutralLimit,
                neutralLimit - figures.neutralAmps(),
                figures.peaks(),
                inrushLimit,
                inrushLimit.isPresent() ? OptionalDouble.of(inrushLimit.getAsDouble() - peak) : OptionalDouble.empty());
    }
}
