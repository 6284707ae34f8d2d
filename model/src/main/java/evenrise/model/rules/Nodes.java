package evenrise.model.rules;

import evenrise.model.electrical.Imbalance;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.electrical.Lag;
import evenrise.model.electrical.LineAmps;
import evenrise.model.electrical.LineSums;
import evenrise.model.electrical.NeutralCurrent;
import evenrise.model.electrical.PeakInrush;
import evenrise.model.electrical.PhaseCurrents;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.NodeLoads.Returned;
import evenrise.model.rules.NodeLoads.Seen;
import evenrise.model.rules.SceneCurrents.InScene;
import java.util.ArrayList;
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
        List<List<LineSums>> behind = scenes.scenes().stream().map(this::behind).toList();
        return distribution.points().stream()
                .map(point -> figures(
                        point,
                        behind.stream().map(all -> all.get(point.index())).toList()))
                .toList();
    }

    /** What makes the supply's peak {@code peak}, largest first. */
    List<PeakShare> shares(PhasePeak peak) {
        Optional<SystemPeaks> systems =
                layout.project().hasClocks() ? Optional.of(systemPeaks(Distribution.SUPPLY)) : Optional.empty();
        return loads.seen(Distribution.SUPPLY).stream()
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

    private NodeFigures figures(Point point, List<LineSums> behind) {
        double deviation = 0;
        double percent = 0;
        double neutral = 0;
        Map<Phase, Double> running = new EnumMap<>(Phase.class);
        Map<Phase, Double> metered = new EnumMap<>(Phase.class);
        for (int i = 0; i < behind.size(); i++) {
            InScene scene = scenes.scenes().get(i);
            PhaseCurrents currents = running(point, scene, behind.get(i));
            Imbalance imbalance = currents.imbalance(had.get(point.index()));
            currents.byPhase().forEach((phase, amps) -> running.merge(phase, amps, Math::max));
            metered(point, scene, behind.get(i)).forEach((phase, amps) -> metered.merge(phase, amps, Math::max));
            percent = Math.max(percent, imbalance.percent());
            deviation += scene.share() * imbalance.deviationAmps();
            neutral = Math.max(neutral, neutralAmps(point, scene));
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

    /** Line currents by phasors, behind transformers with their third harmonics by magnitude. */
    private Map<Phase, Double> metered(Point point, InScene scene, LineSums behind) {
        if (!distribution.feedsTransformers(point.index())) {
            LineAmps lines = new LineAmps(point.system());
            for (Placement each : loads.direct(point.index())) {
                Load load = each.load();
                lines.add(each.phases(), scene.runningAmps().get(load.id()), Lag.of(load), load.harmonicRatio());
            }
            return lines.byPhase();
        }
        LineSums all = direct(point, scene);
        all.add(behind);
        Map<Phase, Double> amps = new EnumMap<>(Phase.class);
        point.system().phases().forEach(phase -> amps.put(phase, all.meteredAmps(phase)));
        return amps;
    }

    private LineSums direct(Point point, InScene scene) {
        LineSums sums = new LineSums(point.system());
        for (Placement each : loads.direct(point.index())) {
            Load load = each.load();
            sums.add(each.phases(), scene.runningAmps().get(load.id()), Lag.of(load), load.harmonicRatio());
        }
        return sums;
    }

    private PhaseCurrents running(Point point, InScene scene, LineSums behind) {
        PhaseCurrents running = new PhaseCurrents(point.system());
        for (Placement each : loads.direct(point.index())) {
            running.add(each.phases(), scene.runningAmps().get(each.id()));
        }
        if (distribution.feedsTransformers(point.index())) {
            point.system().phases().forEach(phase -> running.add(List.of(phase), behind.runningAmps(phase)));
        }
        return running;
    }

    private double neutralAmps(Point point, InScene scene) {
        NeutralCurrent neutral = new NeutralCurrent(point.system());
        for (Returned each : loads.returning(point.index())) {
            Load load = each.placement().load();
            double amps = each.part() * scene.runningAmps().get(load.id());
            neutral.add(each.phase(), amps, Lag.of(load), load.harmonicRatio());
        }
        return neutral.amps();
    }

    /** What the transformers of each point draw from it in a scene; nothing where there are none. */
    private List<LineSums> behind(InScene scene) {
        List<LineSums> drawn = new ArrayList<>();
        distribution.points().forEach(point -> drawn.add(new LineSums(point.system())));
        int[] topDown = distribution.topDown();
        for (int i = topDown.length - 1; i >= 0; i--) {
            Point point = distribution.points().get(topDown[i]);
            if (point.transformer().isPresent()) {
                LineSums fed = direct(point, scene);
                fed.add(drawn.get(point.index()));
                LineSums upstream = point.transformer().get().running(fed);
                distribution.onward(point.parent()).forEach(at -> drawn.get(at).add(upstream));
            }
        }
        return drawn;
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
