package evenrise.solver.document;

import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.PhasePeak;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;

/** Draws up the current of each node over time, at even instants and at the highest switch-on between any two of them. */
final class Envelopes {
    private static final int OF_THE_SUPPLY = 500;
    private static final int OF_A_PANEL = 240;

    private final Layout layout;
    private final double toleranceSeconds;
    private final double endSeconds;

    Envelopes(Layout layout) {
        this.layout = layout;
        this.toleranceSeconds = layout.project().timingToleranceSeconds();
        this.endSeconds = layout.times().durationSeconds() * 1.05 + 1;
    }

    /** The supply, then the panels in the project's order. */
    List<NodeCurves> ofAllNodes() {
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        List<NodeCurves> all = new ArrayList<>();
        for (int i = 0; i < limits.size(); i++) {
            List<Placement> fed = i == 0
                    ? layout.placements().stream().filter(Placement::fits).toList()
                    : layout.in(layout.project().panels().get(i - 1));
            NodeFigures figures = layout.nodes().get(i);
            int samples = i == 0 ? OF_THE_SUPPLY : OF_A_PANEL;
            all.add(new NodeCurves(
                    limits.get(i).node(),
                    limits.get(i).inrushLimitAmps(),
                    figures.peaks().stream().map(peak -> of(fed, peak, samples)).toList()));
        }
        return all;
    }

    private Envelope of(List<Placement> fed, PhasePeak peak, int samples) {
        double[] instants = instants(fed, peak.phase(), samples);
        double[] amps = EnvelopeSum.amps(fed, peak.phase(), toleranceSeconds, instants);
        return new Envelope(peak.phase().name(), list(instants), list(amps), peak.amps(), peak.atSeconds());
    }

    private double[] instants(List<Placement> fed, Phase phase, int samples) {
        double[] starts = fed.stream()
                .filter(each -> each.isSequenced() && each.phases().contains(phase))
                .mapToDouble(each -> Math.max(0, each.onSeconds().getAsDouble() - toleranceSeconds))
                .sorted()
                .distinct()
                .toArray();
        double[] amps = EnvelopeSum.amps(fed, phase, toleranceSeconds, starts);
        TreeSet<Double> instants = new TreeSet<>();
        int next = 0;
        for (int i = 0; i <= samples; i++) {
            double to = endSeconds * i / samples;
            int highest = next;
            for (; next < starts.length && starts[next] <= to; next++) {
                highest = amps[next] > amps[highest] ? next : highest;
            }
            if (highest < next) {
                instants.add(starts[highest]);
            }
            instants.add(to);
        }
        return instants.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static List<Double> list(double[] numbers) {
        return Arrays.stream(numbers).boxed().toList();
    }
}
