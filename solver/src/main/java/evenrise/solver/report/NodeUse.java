package evenrise.solver.report;

import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.PhasePeak;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * The figures of the supply or of one panel beside its limits. A spare below zero is what a limit is exceeded by.
 *
 * @param node the panel's id, or {@link NodeFigures#SUPPLY}
 * @param runningAmps rms, by phase, as magnitudes add: what limits are held against
 * @param phasorAmps rms, by line, as phasors add: what a meter shows
 * @param meanAmps over the phases that it has
 * @param runningLimitAmps rating times the continuous fraction, for each phase
 * @param runningSpareAmps of the phase that runs highest
 * @param neutralWorstUseAmps whatever of its one-pole loads is on; limits of the hard rule are about all on
 * @param peaks instantaneous, by the envelopes at nominal voltage, by phase
 * @param inrushSpareAmps of the phase that peaks highest
 */
public record NodeUse(
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
        double neutralWorstUseAmps,
        List<PhasePeak> peaks,
        OptionalDouble inrushLimitAmps,
        OptionalDouble inrushSpareAmps,
        Map<Phase, Double> phasorAmps) {

    /** The supply first, then the panels in the project's order. */
    public static List<NodeUse> of(Layout layout) {
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        return IntStream.range(0, limits.size())
                .mapToObj(i -> of(
                        layout.nodes().get(i),
                        limits.get(i),
                        layout.worstNeutralAmps().get(i)))
                .toList();
    }

    /** Of all phases. */
    public double greatestPeakAmps() {
        return peaks.stream().mapToDouble(PhasePeak::amps).max().orElse(0);
    }

    private static NodeUse of(NodeFigures figures, NodeLimits limits, double worstNeutralAmps) {
        double runningLimit = limits.continuousAmps();
        OptionalDouble inrushLimit = limits.inrushLimitAmps();
        Map<Phase, Double> running = figures.runningAmps();
        double highest = running.isEmpty() ? 0 : Collections.max(running.values());
        double mean =
                limits.phases().stream().mapToDouble(running::get).average().orElse(0);
        double peak =
                figures.peaks().stream().mapToDouble(PhasePeak::amps).max().orElse(0);
        return new NodeUse(
                figures.node(),
                running,
                mean,
                figures.deviationAmps(),
                figures.imbalancePercent(),
                runningLimit,
                runningLimit - highest,
                figures.neutralAmps(),
                limits.neutralAmps(),
                limits.neutralAmps() - figures.neutralAmps(),
                worstNeutralAmps,
                figures.peaks(),
                inrushLimit,
                inrushLimit.isPresent() ? OptionalDouble.of(inrushLimit.getAsDouble() - peak) : OptionalDouble.empty(),
                figures.phasorAmps());
    }
}
