package evenrise.solver.document;

import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.NodeLoads.Seen;
import evenrise.model.rules.NodeStart;
import evenrise.model.rules.PhasePeak;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/** Draws up the current of each node over time, at even instants and at the highest switch-on between any two of them. */
final class Envelopes {
    private static final int OF_THE_SUPPLY = 500;
    private static final int OF_A_PANEL = 240;

    private final Layout layout;
    private final double toleranceSeconds;
    private final double endSeconds;
    private final List<NodeLimits> limits;

    Envelopes(Layout layout) {
        this.layout = layout;
        this.limits = NodeLimits.of(layout.project());
        this.toleranceSeconds = layout.project().timingToleranceSeconds();
        this.endSeconds = layout.clocks().longestSeconds() * 1.05 + 1;
    }

    /**
     * The supply, then the panels, then the further nodes in the project's order: of the supply as each command is carried
     * out, of sources as each is that switches something there, of the others as that one is that makes most.
     */
    List<NodeCurves> ofAllNodes() {
        List<NodeCurves> all = new ArrayList<>();
        for (Point point : layout.distribution().points()) {
            all.addAll(of(point));
        }
        return all;
    }

    /** One node, as each command is carried out that is drawn of it. */
    List<NodeCurves> of(Point point) {
        int samples = point.isSupply() || point.isFurtherSource() ? OF_THE_SUPPLY : OF_A_PANEL;
        return drawn(point).stream().map(start -> of(point, start, samples)).toList();
    }

    private List<NodeStart> drawn(Point point) {
        List<NodeStart> starts = layout.starts(point.index());
        if (point.isSupply()) {
            return starts;
        }
        List<NodeStart> own = starts.stream()
                .filter(start -> point.isFurtherSource()
                        && !switchedBy(layout, point.index(), start.system()).isEmpty())
                .toList();
        return own.isEmpty() ? List.of(most(starts)) : own;
    }

    /** The start that makes most of it; of equals the first. */
    static NodeStart most(List<NodeStart> starts) {
        return starts.stream()
                .reduce((kept, next) -> next.mostAmps() > kept.mostAmps() ? next : kept)
                .orElseThrow();
    }

    /** What a node sees of the loads that a command switches; of all, where there is one. */
    static List<Seen> switchedBy(Layout layout, int node, Optional<String> system) {
        return layout.nodeLoads().seen(node).stream()
                .filter(each -> system.isEmpty()
                        || each.placement().isSequenced()
                                && each.placement().load().system().equals(system))
                .toList();
    }

    private NodeCurves of(Point point, NodeStart start, int samples) {
        List<Seen> fed = switchedBy(layout, point.index(), start.system());
        PhaseColours colours = PhaseColours.of(layout.distribution(), point, layout.project());
        return new NodeCurves(
                point.id(),
                start.system(),
                limits.get(point.index()).inrushLimitAmps(),
                start.peaks().values().stream()
                        .map(peak -> of(fed, start, peak, colours.of(peak.phase()), samples))
                        .toList());
    }

    private Envelope of(List<Seen> fed, NodeStart start, PhasePeak peak, String colour, int samples) {
        double rest = start.restAmps().get(peak.phase());
        double[] instants = instants(fed, peak.phase(), samples);
        double[] amps = EnvelopeSum.amps(fed, peak.phase(), toleranceSeconds, instants);
        return new Envelope(
                peak.phase().name(),
                colour,
                list(instants),
                Arrays.stream(amps).map(each -> rest + each).boxed().toList(),
                peak.amps(),
                peak.atSeconds(),
                rest,
                start.usedAmps().get(peak.phase()));
    }

    private double[] instants(List<Seen> fed, Phase phase, int samples) {
        double[] starts = fed.stream()
                .filter(each -> each.placement().isSequenced() && each.parts()[phase.ordinal()] > 0)
                .mapToDouble(each -> Math.max(0, each.placement().onSeconds().orElseThrow() - toleranceSeconds))
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
