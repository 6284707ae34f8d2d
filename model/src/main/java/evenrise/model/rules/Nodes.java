package evenrise.model.rules;

import evenrise.model.electrical.Imbalance;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.electrical.PeakInrush;
import evenrise.model.electrical.PhaseCurrents;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.NodeLoads.Seen;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Computes the electrical figures of the supply, of each panel and of each further node from where the loads sit and when
 * they come on.
 */
final class Nodes {
    private final Layout layout;
    private final Distribution distribution;
    private final NodeLoads loads;
    private final SceneCurrents scenes;
    private final List<List<Phase>> had;
    private final double toleranceSeconds;

    Nodes(Layout layout) {
        this.layout = layout;
        this.distribution = layout.distribution();
        this.loads = layout.nodeLoads();
        this.scenes = SceneCurrents.of(layout.index());
        this.had =
                NodeLimits.of(layout.project()).stream().map(NodeLimits::phases).toList();
        this.toleranceSeconds = layout.project().timingToleranceSeconds();
    }

    /** The supply first, then panels and nodes in the project's order. A load that fits nowhere draws nowhere. */
    List<NodeFigures> figures() {
        List<UseCurrents> uses = layout.sceneUses();
        return distribution.points().stream().map(point -> figures(point, uses)).toList();
    }

    /** What makes the peak {@code peak} of a node, largest first. */
    List<PeakShare> shares(int node, PhasePeak peak) {
        Optional<SystemPeaks> systems =
                layout.project().hasClocks() ? Optional.of(systemPeaks(node)) : Optional.empty();
        return loads.seen(node).stream()
                .filter(each -> each.parts()[peak.phase().ordinal()] > 0)
                .map(each -> share(each, peak, systems))
                .filter(share -> share.amps() > 0)
                .sorted(Comparator.comparingDouble(PeakShare::amps).reversed())
                .toList();
    }

    private PeakShare share(Seen seen, PhasePeak peak, Optional<SystemPeaks> systems) {
        Placement placement = seen.placement();
        double part = seen.parts()[peak.phase().ordinal()];
        InrushEnvelope envelope = envelope(placement.load()).times(part);
        OptionalDouble instant = OptionalDouble.of(peak.atSeconds());
        if (systems.isPresent()) {
            instant = systems.get().instantSeconds(peak.phase(), placement);
            if (instant.isEmpty()) {
                double used = part * inUse(placement.load());
                return new PeakShare(placement.id(), used, used);
            }
        }
        double amps = placement.isSequenced()
                ? envelope.amps(placement.on(), instant.getAsDouble() - toleranceSeconds)
                : envelope.baseAmps();
        return new PeakShare(placement.id(), amps, envelope.baseAmps());
    }

    private NodeFigures figures(Point point, List<UseCurrents> uses) {
        double deviation = 0;
        double percent = 0;
        double neutral = 0;
        Map<Phase, Double> running = new EnumMap<>(Phase.class);
        Map<Phase, Double> metered = new EnumMap<>(Phase.class);
        for (int i = 0; i < uses.size(); i++) {
            UseCurrents use = uses.get(i);
            PhaseCurrents currents = use.running(point);
            Imbalance imbalance = currents.imbalance(had.get(point.index()));
            currents.byPhase().forEach((phase, amps) -> running.merge(phase, amps, Math::max));
            use.metered(point).forEach((phase, amps) -> metered.merge(phase, amps, Math::max));
            percent = Math.max(percent, imbalance.percent());
            deviation += scenes.scenes().get(i).share() * imbalance.deviationAmps();
            neutral = Math.max(neutral, use.neutralAmps(point));
        }
        return new NodeFigures(
                point.id(),
                Collections.unmodifiableMap(running),
                percent,
                deviation,
                neutral,
                peaks(point),
                Collections.unmodifiableMap(metered));
    }

    private List<PhasePeak> peaks(Point point) {
        List<Phase> phases = point.system().phases();
        if (layout.project().hasClocks()) {
            SystemPeaks peaks = systemPeaks(point.index());
            return phases.stream().map(peaks::peak).toList();
        }
        PeakInrush inrush = PeakInrush.of(loads.draws(point.index(), each -> envelope(each.load())));
        return phases.stream()
                .map(phase -> new PhasePeak(phase, inrush.amps(phase), inrush.atSeconds(phase)))
                .toList();
    }

    /** What a node carries as each command is carried out. */
    List<NodeStart> starts(Point point) {
        if (layout.project().hasClocks()) {
            return systemPeaks(point.index()).starts(point.system().phases());
        }
        Map<Phase, Double> none = new EnumMap<>(Phase.class);
        Map<Phase, PhasePeak> peaks = new EnumMap<>(Phase.class);
        for (PhasePeak peak : layout.nodes().get(point.index()).peaks()) {
            none.put(peak.phase(), 0.0);
            peaks.put(peak.phase(), peak);
        }
        return List.of(new NodeStart(
                Optional.empty(),
                Collections.unmodifiableMap(none),
                Collections.unmodifiableMap(peaks),
                Collections.unmodifiableMap(none)));
    }

    private SystemPeaks systemPeaks(int node) {
        return new SystemPeaks(layout, loads.seen(node), this::envelope, this::inUse);
    }

    /** Crest of what a load draws in use: at its largest use in any scene, or idling. */
    private double inUse(Load load) {
        return Math.sqrt(2) * Math.max(load.idleAmps(), scenes.mostAmps(load));
    }

    private InrushEnvelope envelope(Load load) {
        return InrushEnvelope.of(load, toleranceSeconds);
    }
}
