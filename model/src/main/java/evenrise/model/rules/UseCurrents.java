package evenrise.model.rules;

import evenrise.model.electrical.Lag;
import evenrise.model.electrical.LineAmps;
import evenrise.model.electrical.LineSums;
import evenrise.model.electrical.NeutralCurrent;
import evenrise.model.electrical.PhaseCurrents;
import evenrise.model.electrical.SymmetricalComponents;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.NodeLoads.Returned;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/** What the lines and the neutral of every point carry at one use of the plant: each load draws what that use says. */
public final class UseCurrents {
    private final Distribution distribution;
    private final NodeLoads loads;
    private final ToDoubleFunction<Load> amps;
    private final List<LineSums> behind = new ArrayList<>();

    private UseCurrents(Layout layout, ToDoubleFunction<Load> amps) {
        this.distribution = layout.distribution();
        this.loads = layout.nodeLoads();
        this.amps = amps;
        draw();
    }

    /** @param amps rms current in each pole of a load, fundamental and third harmonic together */
    public static UseCurrents of(Layout layout, ToDoubleFunction<Load> amps) {
        return new UseCurrents(layout, amps);
    }

    /** Of each line by magnitudes: R. */
    public PhaseCurrents running(Point point) {
        PhaseCurrents running = new PhaseCurrents(point.system());
        for (Placement each : loads.direct(point.index())) {
            running.add(each.phases(), amps.applyAsDouble(each.load()));
        }
        if (distribution.feedsTransformers(point.index())) {
            LineSums drawn = behind.get(point.index());
            point.system().phases().forEach(phase -> running.add(List.of(phase), drawn.runningAmps(phase)));
        }
        return running;
    }

    /** The same by phase, ampere rms. */
    public Map<Phase, Double> runningAmps(Point point) {
        return running(point).byPhase();
    }

    /** Of the line that carries most of it. */
    public double greatestAmps(Point point) {
        return Collections.max(running(point).byPhase().values());
    }

    /** What the wiring before a point carries on each line: of a transformer, what it draws from its primary phases. */
    public Map<Phase, Double> feederAmps(Point point) {
        if (point.transformer().isEmpty()) {
            return running(point).byPhase();
        }
        LineSums drawn = point.transformer().get().running(sums(point));
        Map<Phase, Double> lines = new EnumMap<>(Phase.class);
        point.transformer().get().primaryPhases().forEach(phase -> lines.put(phase, drawn.runningAmps(phase)));
        return Collections.unmodifiableMap(lines);
    }

    /** Line currents by phasors, behind transformers with their third harmonics by magnitude. */
    public Map<Phase, Double> metered(Point point) {
        if (!distribution.feedsTransformers(point.index())) {
            return lines(point).byPhase();
        }
        LineSums all = sums(point);
        Map<Phase, Double> metered = new EnumMap<>(Phase.class);
        point.system().phases().forEach(phase -> metered.put(phase, all.meteredAmps(phase)));
        return Collections.unmodifiableMap(metered);
    }

    private LineAmps lines(Point point) {
        LineAmps lines = new LineAmps(point.system());
        for (Placement each : loads.direct(point.index())) {
            Load load = each.load();
            lines.add(each.phases(), amps.applyAsDouble(load), Lag.of(load), load.harmonicRatio());
        }
        return lines;
    }

    /** Of the fundamentals of a point of three phases. */
    public SymmetricalComponents components(Point point) {
        return distribution.feedsTransformers(point.index())
                ? sums(point).components()
                : lines(point).components();
    }

    /** R, Z and H of all that the point feeds. */
    public LineSums sums(Point point) {
        LineSums all = direct(point);
        all.add(behind.get(point.index()));
        return all;
    }

    public double neutralAmps(Point point) {
        NeutralCurrent neutral = new NeutralCurrent(point.system());
        for (Returned each : loads.returning(point.index())) {
            Load load = each.placement().load();
            neutral.add(each.phase(), each.part() * amps.applyAsDouble(load), Lag.of(load), load.harmonicRatio());
        }
        return neutral.amps();
    }

    /** Third harmonics in the neutral of a point. */
    public double neutralThirdAmps(Point point) {
        double third = 0;
        for (Returned each : loads.returning(point.index())) {
            Load load = each.placement().load();
            third += NeutralCurrent.share(
                            point.system(),
                            each.phase(),
                            each.part() * amps.applyAsDouble(load),
                            Lag.of(load),
                            load.harmonicRatio())
                    .thirdAmps();
        }
        return Math.abs(third);
    }

    private LineSums direct(Point point) {
        LineSums sums = new LineSums(point.system());
        for (Placement each : loads.direct(point.index())) {
            Load load = each.load();
            sums.add(each.phases(), amps.applyAsDouble(load), Lag.of(load), load.harmonicRatio());
        }
        return sums;
    }

    /** What the transformers of each point draw from it; nothing where there are none. */
    private void draw() {
        distribution.points().forEach(point -> behind.add(new LineSums(point.system())));
        int[] topDown = distribution.topDown();
        for (int i = topDown.length - 1; i >= 0; i--) {
            Point point = distribution.points().get(topDown[i]);
            if (point.transformer().isPresent()) {
                LineSums upstream = point.transformer().get().running(sums(point));
                distribution.onward(point.parent()).forEach(at -> behind.get(at).add(upstream));
            }
        }
    }
}
