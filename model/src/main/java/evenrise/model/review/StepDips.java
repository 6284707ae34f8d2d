package evenrise.model.review;

import evenrise.model.electrical.Lag;
import evenrise.model.electrical.LineCurrents;
import evenrise.model.electrical.LinePower;
import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.breaker.TripEquivalent;
import evenrise.model.electrical.source.Drawn;
import evenrise.model.electrical.source.Inrush;
import evenrise.model.electrical.source.Instant;
import evenrise.model.electrical.source.Plant;
import evenrise.model.electrical.source.SteadyDrops;
import evenrise.model.electrical.source.Terminals;
import evenrise.model.electrical.source.UnitDrops;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleBiFunction;
import java.util.function.ToDoubleFunction;

/**
 * The voltages of the supply and of every panel at every switch-on of the sequence, to neutral and between lines. A load's inrush
 * counts for the rms of its excess over one half-cycle, in the shape of the contract's envelope; what earlier loads have left
 * of theirs is added. Loads that are on draw their idle current, of the fundamental, at their power factor.
 */
final class StepDips {
    /** In the place of a system's name, which is never empty. */
    private static final String ONE_CLOCK = "";

    /** A part of the excess below which a load no longer counts. */
    private static final double NOTHING_RATIO = 1e-6;

    /** Loads that start within so little of each other start together. */
    private static final double SAME_SECONDS = 1e-12;

    /** Moments whose voltages are kept; those of others are worked out anew. */
    private static final int REMEMBERED = 16;

    private record Draw(
            Load load,
            String panel,
            List<Phase> phases,
            double startSeconds,
            double onSeconds,
            double excessAmps,
            double idleAmps) {
        double halfSeconds() {
            return load.inrushHalfMillis() / 1000;
        }

        /** What is left of the excess, by the envelope: whole for twice the tolerance, then halving. */
        double excessAt(double seconds, double toleranceSeconds) {
            double decaying = Math.max(0, seconds - startSeconds - 2 * toleranceSeconds);
            return excessAmps * Math.pow(2, -decaying / halfSeconds());
        }
    }

    /** What draws before anything else does: nothing, in each panel. A panel where nothing has changed keeps its values. */
    private final class Standing {
        final Map<String, LineCurrents> currents = new LinkedHashMap<>();
        final Map<String, LineValues> amps = new LinkedHashMap<>();
        final Map<String, SteadyDrops> known = new LinkedHashMap<>();

        Standing() {
            for (Panel panel : project.panels()) {
                currents.put(panel.id(), new LineCurrents(distribution.of(panel).system()));
                amps.put(panel.id(), LineValues.ZERO);
                known.put(panel.id(), SteadyDrops.NONE);
            }
        }

        void add(Draw draw) {
            LineCurrents here = currents.get(draw.panel());
            here.add(draw.phases(), draw.idleAmps(), Lag.of(draw.load()));
            amps.put(draw.panel(), here.lines());
            Drawn more = new Drawn(draw.panel(), draw.phases(), draw.idleAmps());
            known.computeIfPresent(draw.panel(), (panel, drops) -> drops.plus(units, more));
        }

        Map<String, LineValues> amps() {
            return new LinkedHashMap<>(amps);
        }

        Map<String, SteadyDrops> known() {
            return new LinkedHashMap<>(known);
        }
    }

    private final Project project;
    private final Distribution distribution;
    private final UnitDrops units;
    private final Map<Moment, Map<Double, Instant>> recent = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Moment, Map<Double, Instant>> eldest) {
            return size() > REMEMBERED;
        }
    };
    private final Map<String, Set<Terminals>> used;

    /** By what the steps belong to: a system with a clock of its own, or the one clock. */
    private final Map<String, Map<String, Map<Terminals, List<DipStep>>>> steps = new LinkedHashMap<>();

    private StepDips(Layout layout, Plant plant) {
        this.project = layout.project();
        this.distribution = layout.distribution();
        this.units = new UnitDrops(
                plant,
                FedTerminals.all(distribution),
                distribution.points().stream().map(Point::id).toList());
        this.used = FedTerminals.of(layout);
        if (layout.project().hasClocks()) {
            project.systems().forEach(system -> sweep(system.id(), draws(layout, Optional.of(system.id()))));
        } else {
            sweep(ONE_CLOCK, draws(layout, Optional.empty()));
        }
    }

    private Point point(String id) {
        return distribution.point(id).orElseThrow();
    }

    static StepDips of(Layout layout, Plant plant) {
        return new StepDips(layout, plant);
    }

    /** Every switch-on as a node sees it, wherever in the plant, between all terminals that feed a load there. */
    List<DipStep> steps(String node) {
        return steps.values().stream()
                .flatMap(clock -> clock.getOrDefault(node, Map.of()).values().stream())
                .flatMap(List::stream)
                .toList();
    }

    /** Of some steps the one with the greatest figure; empty where that is nowhere above {@code least}. */
    static Optional<Dip> greatest(
            List<DipStep> steps,
            DipReading reading,
            ToDoubleBiFunction<DipStep, DipReading> most,
            ToDoubleFunction<Dip> figure,
            double least) {
        ToDoubleFunction<DipStep> atMost = step -> most.applyAsDouble(step, reading);
        // Of all but few steps it is known that they are less than the first.
        DipStep first = steps.stream().max(Comparator.comparingDouble(atMost)).orElse(null);
        if (first == null || atMost.applyAsDouble(first) <= least) {
            return Optional.empty();
        }
        double atLeast = Math.max(least, figure.applyAsDouble(reading.of(first)));
        List<DipStep> inOrder = steps.stream()
                .filter(step -> step == first || atMost.applyAsDouble(step) > atLeast)
                .sorted(Comparator.comparingDouble(atMost).reversed())
                .toList();
        Dip greatest = null;
        double so = least;
        for (DipStep step : inOrder) {
            if (atMost.applyAsDouble(step) <= so) {
                break;
            }
            Dip dip = reading.of(step);
            if (figure.applyAsDouble(dip) > so) {
                greatest = dip;
                so = figure.applyAsDouble(dip);
            }
        }
        return Optional.ofNullable(greatest);
    }

    /**
     * The switch-ons after a load came on, on its own clock, and all of other clocks, as what is fed by its phases in its panel
     * sees them.
     */
    List<DipStep> after(Placement load) {
        double on = load.onSeconds().orElse(Double.NEGATIVE_INFINITY);
        String own = load.load().system().orElse(ONE_CLOCK);
        List<DipStep> all = new ArrayList<>();
        steps.forEach((clock, nodes) -> {
            Map<Terminals, List<DipStep>> here =
                    nodes.getOrDefault(load.assignment().panel(), Map.of());
            boolean isOwn = clock.equals(own) || clock.equals(ONE_CLOCK);
            Terminals.of(load.phases()).stream()
                    .filter(here::containsKey)
                    .map(here::get)
                    .forEach(each -> all.addAll(isOwn ? each.subList(firstAfter(each, on), each.size()) : each));
        });
        return all;
    }

    /** Of steps in the order of time. */
    private static int firstAfter(List<DipStep> steps, double seconds) {
        int from = 0;
        int to = steps.size();
        while (from < to) {
            int middle = (from + to) / 2;
            if (steps.get(middle).atSeconds() > seconds) {
                to = middle;
            } else {
                from = middle + 1;
            }
        }
        return from;
    }

    /** Gear that is alike in these is taken to be alike. */
    private static List<Double> kind(Load load) {
        return List.of(Lag.of(load).radians(), load.harmonicRatio(), load.inrushHalfMillis());
    }

    /** @param starting the system that starts while all else is in full use; empty where all have one clock */
    private List<Draw> draws(Layout layout, Optional<String> starting) {
        double frequency = project.supply().frequencyHertz();
        double tolerance = project.timingToleranceSeconds();
        List<Draw> all = new ArrayList<>();
        for (Placement each : layout.placements()) {
            if (each.fits()) {
                Load load = each.load();
                double excess = load.excessAmps();
                boolean isStarting = starting.isEmpty()
                        || each.load().switched() && each.load().system().equals(starting);
                double on = isStarting ? each.onSeconds().orElse(Double.NEGATIVE_INFINITY) : Double.NEGATIVE_INFINITY;
                double steady = isStarting ? load.idleAmps() : Math.max(load.runningAmps(), load.idleAmps());
                all.add(new Draw(
                        load,
                        each.assignment().panel(),
                        each.phases().stream().distinct().toList(),
                        on - tolerance,
                        on,
                        each.isSequenced()
                                ? TripEquivalent.pulseAmps(excess, load.inrushHalfMillis() / 1000, frequency)
                                : 0,
                        steady / LinePower.rmsOverFundamental(load.harmonicRatio())));
            }
        }
        all.sort(Comparator.comparingDouble(Draw::startSeconds));
        return all;
    }

    private void sweep(String clock, List<Draw> inOrder) {
        Standing standing = new Standing();
        List<Draw> active = new ArrayList<>();
        for (int next = 0; next < inOrder.size(); ) {
            double now = inOrder.get(next).startSeconds();
            Instant before = new Instant(units, standing.amps(), standing.known(), List.of());
            List<Draw> closing = new ArrayList<>();
            for (; next < inOrder.size() && inOrder.get(next).startSeconds() <= now + SAME_SECONDS; next++) {
                closing.add(inOrder.get(next));
                standing.add(inOrder.get(next));
            }
            active.addAll(closing);
            if (now > Double.NEGATIVE_INFINITY) {
                note(clock, new Moment(now, active, standing), before, closing);
                active.removeIf(draw ->
                        draw.excessAt(now, project.timingToleranceSeconds()) <= NOTHING_RATIO * draw.excessAmps());
            }
        }
    }

    private void note(String clock, Moment moment, Instant before, List<Draw> closing) {
        Draw greatest = closing.stream()
                .max(Comparator.comparingDouble(draw -> draw.excessAmps() + draw.idleAmps()))
                .orElseThrow();
        Instant now = moment.instant(0);
        Map<Terminals, Draw> named = new HashMap<>();
        units.terminals()
                .forEach(at -> named.put(
                        at,
                        closing.stream()
                                .filter(draw -> Terminals.of(draw.phases()).contains(at))
                                .max(Comparator.comparingDouble(draw -> draw.excessAmps() + draw.idleAmps()))
                                .orElse(greatest)));
        used.forEach((node, all) -> all.forEach(at -> steps.computeIfAbsent(clock, any -> new HashMap<>())
                .computeIfAbsent(node, any -> new LinkedHashMap<>())
                .computeIfAbsent(at, any -> new ArrayList<>())
                .add(new DipStep(
                        node,
                        point(node).label(),
                        at,
                        named.get(at).onSeconds(),
                        named.get(at).load().id(),
                        before.steadyPercent(node, at),
                        now,
                        moment))));
    }

    /** What draws at one switch-on, and what is left of it later if nothing else is switched. */
    private final class Moment implements DipStep.Aftermath {
        private final double nowSeconds;
        private final Map<String, LineValues> amps;
        private final Map<String, SteadyDrops> known;
        private final List<Draw> active;

        Moment(double nowSeconds, List<Draw> active, Standing standing) {
            this.nowSeconds = nowSeconds;
            this.amps = standing.amps();
            this.known = standing.known();
            this.active = List.copyOf(active);
        }

        @Override
        public Instant after(double seconds) {
            Map<Double, Instant> here = recent.computeIfAbsent(this, any -> new HashMap<>());
            Instant then = here.get(seconds);
            if (then == null) {
                then = instant(seconds);
                here.put(seconds, then);
            }
            return then;
        }

        @Override
        public double halfLifeSeconds() {
            return active.stream().mapToDouble(Draw::halfSeconds).max().orElse(0.01);
        }

        @Override
        public double flatSeconds() {
            return 1 / (2 * project.supply().frequencyHertz());
        }

        private Instant instant(double seconds) {
            return seconds == 0 ? new Instant(units, this.amps, known, left(0)) : after(0).later(left(seconds));
        }

        private List<Inrush> left(double seconds) {
            List<Inrush> left = new ArrayList<>();
            for (Draw draw : active) {
                double amps = draw.excessAt(nowSeconds, project.timingToleranceSeconds())
                        * Math.pow(2, -seconds / draw.halfSeconds());
                if (amps > NOTHING_RATIO * draw.excessAmps()) {
                    left.add(new Inrush(
                            new Drawn(draw.panel(), draw.phases(), amps),
                            Lag.of(draw.load()).radians(),
                            kind(draw.load())));
                }
            }
            return left;
        }
    }
}
