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
import evenrise.model.electrical.source.Terminals;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
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

    /** What draws before anything else does: nothing, in each panel. */
    private final class Standing {
        final Map<String, LineCurrents> currents = new LinkedHashMap<>();
        final Map<Drawn, Double> known = new LinkedHashMap<>();

        Standing() {
            project.panels()
                    .forEach(panel -> currents.put(
                            panel.id(), new LineCurrents(distribution.of(panel).system())));
        }

        void add(Draw draw) {
            currents.get(draw.panel()).add(draw.phases(), draw.idleAmps(), Lag.of(draw.load()));
            known.merge(new Drawn(draw.panel(), draw.phases(), 0), draw.idleAmps(), Double::sum);
        }

        Map<String, LineValues> amps() {
            Map<String, LineValues> amps = new LinkedHashMap<>();
            currents.forEach((panel, lines) -> amps.put(panel, lines.lines()));
            return amps;
        }

        List<Drawn> known() {
            List<Drawn> all = new ArrayList<>();
            known.forEach((place, amps) -> all.add(new Drawn(place.panel(), place.phases(), amps)));
            return all;
        }
    }

    private final Project project;
    private final Distribution distribution;
    private final Map<List<String>, Map<Drawn, double[]>> units = new HashMap<>();
    private final Plant plant;
    private final List<Terminals> terminals;
    private final Map<String, Set<Terminals>> used = new LinkedHashMap<>();

    /** By what the steps belong to: a system with a clock of its own, or the one clock. */
    private final Map<String, Map<String, Map<Terminals, TreeMap<Double, DipStep>>>> steps = new LinkedHashMap<>();

    private StepDips(Layout layout, Plant plant) {
        this.project = layout.project();
        this.distribution = layout.distribution();
        this.plant = plant;
        this.terminals = distribution.points().stream()
                .flatMap(point -> Terminals.all(point.system()).stream())
                .distinct()
                .toList();
        distribution.points().forEach(point -> used.put(point.id(), new LinkedHashSet<>()));
        draws(layout, Optional.empty()).forEach(this::use);
        if (layout.project().hasClocks()) {
            project.systems().forEach(system -> sweep(system.id(), draws(layout, Optional.of(system.id()))));
        } else {
            sweep(ONE_CLOCK, draws(layout, Optional.empty()));
        }
    }

    /** Terminals that a load is fed from, at its panel and all that carries its current; before transformers what those draw from. */
    private void use(Draw draw) {
        Point panel = point(draw.panel());
        used(panel.system(), draw.phases()).forEach(at -> {
            used.get(draw.panel()).add(at);
            distribution.onward(panel.index()).stream()
                    .skip(1)
                    .forEach(index ->
                            used.get(distribution.points().get(index).id()).add(at));
        });
        for (Point origin = distribution.points().get(panel.origin());
                origin.transformer().isPresent();
                origin = distribution
                        .points()
                        .get(distribution.points().get(origin.parent()).origin())) {
            List<Terminals> drawn = drawnFrom(origin);
            distribution
                    .onward(origin.parent())
                    .forEach(index ->
                            used.get(distribution.points().get(index).id()).addAll(drawn));
        }
    }

    private List<Terminals> drawnFrom(Point transformer) {
        List<Phase> primary = transformer.transformer().orElseThrow().primaryPhases();
        return transformer.transformer().orElseThrow().passesNeutralOn()
                ? primary.stream().map(Terminals::neutral).toList()
                : Terminals.of(primary);
    }

    private Point point(String id) {
        return distribution.point(id).orElseThrow();
    }

    static StepDips of(Layout layout, Plant plant) {
        return new StepDips(layout, plant);
    }

    /** A one-pole load has a neutral by it, through which it moves the other phases, too. */
    private static List<Terminals> used(PhaseSystem system, List<Phase> phases) {
        return phases.size() == 1
                ? system.phases().stream().map(Terminals::neutral).toList()
                : Terminals.of(phases);
    }

    /** Every switch-on as a node sees it, wherever in the plant, between all terminals that feed a load there. */
    List<DipStep> steps(String node) {
        return steps.values().stream()
                .flatMap(clock -> clock.getOrDefault(node, Map.of()).values().stream())
                .flatMap(each -> each.values().stream())
                .toList();
    }

    /** Of some steps the one with the greatest figure; empty where that is nowhere above {@code least}. */
    static Optional<Dip> greatest(
            List<DipStep> steps,
            Function<DipStep, Dip> reading,
            ToDoubleFunction<DipStep> most,
            ToDoubleFunction<Dip> figure,
            double least) {
        List<DipStep> inOrder = steps.stream()
                .sorted(Comparator.comparingDouble(most).reversed())
                .toList();
        Dip greatest = null;
        double so = least;
        for (DipStep step : inOrder) {
            if (most.applyAsDouble(step) <= so) {
                break;
            }
            Dip dip = reading.apply(step);
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
            Map<Terminals, TreeMap<Double, DipStep>> here =
                    nodes.getOrDefault(load.assignment().panel(), Map.of());
            boolean isOwn = clock.equals(own) || clock.equals(ONE_CLOCK);
            Terminals.of(load.phases()).stream()
                    .filter(here::containsKey)
                    .map(here::get)
                    .forEach(each -> all.addAll((isOwn ? each.tailMap(on, false) : each).values()));
        });
        return all;
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
            Instant before = new Instant(plant, terminals, standing.amps(), standing.known(), List.of(), units);
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
        used.forEach((node, all) -> all.forEach(at -> {
            Draw named = closing.stream()
                    .filter(draw -> Terminals.of(draw.phases()).contains(at))
                    .max(Comparator.comparingDouble(draw -> draw.excessAmps() + draw.idleAmps()))
                    .orElse(greatest);
            DipStep step = new DipStep(
                    node,
                    point(node).label(),
                    at,
                    named.onSeconds(),
                    named.load().id(),
                    before.steadyPercent(node, at),
                    moment);
            steps.computeIfAbsent(clock, any -> new HashMap<>())
                    .computeIfAbsent(node, any -> new LinkedHashMap<>())
                    .computeIfAbsent(at, any -> new TreeMap<>())
                    .put(step.atSeconds(), step);
        }));
    }

    /** What draws at one switch-on, and what is left of it later if nothing else is switched. */
    private final class Moment implements DipStep.Aftermath {
        private final double nowSeconds;
        private final Map<String, LineValues> amps;
        private final List<Drawn> known;
        private final List<Draw> active;
        private final Map<Double, Instant> instants = new HashMap<>();

        Moment(double nowSeconds, List<Draw> active, Standing standing) {
            this.nowSeconds = nowSeconds;
            this.amps = standing.amps();
            this.known = standing.known();
            this.active = List.copyOf(active);
        }

        @Override
        public Instant after(double seconds) {
            return instants.computeIfAbsent(seconds, this::instant);
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
            return new Instant(plant, terminals, this.amps, known, left, units);
        }
    }
}
