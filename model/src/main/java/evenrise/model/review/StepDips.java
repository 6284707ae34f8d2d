package evenrise.model.review;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.breaker.TripEquivalent;
import evenrise.model.electrical.source.DipDecay;
import evenrise.model.electrical.source.StepDip;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Voltage at the supply and at each panel, phase by phase, at every switch-on of the sequence. A load's inrush counts for the
 * rms of its excess over one half-cycle, in the shape of the contract's envelope; currents of all loads add as numbers and
 * meet |Z|, whatever their angles, as {@link StepDip#mostPercent}: an upper bound of the half-cycle rms dip. Loads that are on draw their idle current
 * steadily. A one-pole load's current returns through the feeder's neutral, too.
 */
final class StepDips {
    /** A part of the excess below which a load no longer counts. */
    private static final double NOTHING_RATIO = 1e-6;

    /**
     * One switch-on at one node and phase.
     *
     * @param load that switches, the first of those at the same instant
     * @param percent dip, of the nominal voltage
     * @param steadyPercent by which the voltage is low already
     */
    record Step(String node, Phase phase, double atSeconds, String load, double percent, double steadyPercent) {
        double totalPercent() {
            return Math.min(100, percent + steadyPercent);
        }
    }

    private record Draw(
            String load,
            String panel,
            double startSeconds,
            double onSeconds,
            double excessAmps,
            double idleAmps,
            double halfSeconds,
            double ways) {
        /** What is left of the excess, by the envelope: whole for twice the tolerance, then halving. */
        double excessAt(double seconds, double toleranceSeconds) {
            double decaying = Math.max(0, seconds - startSeconds - 2 * toleranceSeconds);
            return excessAmps * Math.pow(2, -decaying / halfSeconds);
        }
    }

    private final double toleranceSeconds;
    private final double halfCycleSeconds;
    private final double perSourceAmp;
    private final Map<String, Double> perFeederAmp;
    private final Map<Phase, List<Draw>> draws = new LinkedHashMap<>();
    private final Map<Step, DipDecay> decays = new HashMap<>();
    private final Map<String, Map<Phase, TreeMap<Double, Step>>> steps = new HashMap<>();

    private StepDips(Layout layout, Impedance source, Map<String, Impedance> feeders) {
        Project project = layout.project();
        double volts = project.supply().lineToNeutralVolts();
        this.toleranceSeconds = project.timingToleranceSeconds();
        this.halfCycleSeconds = 1 / (2 * project.supply().frequencyHertz());
        this.perSourceAmp = 100 * source.magnitudeOhms() / volts;
        this.perFeederAmp = new HashMap<>();
        feeders.forEach((panel, feeder) -> perFeederAmp.put(panel, 100 * feeder.magnitudeOhms() / volts));
        for (Phase phase : project.supply().system().phases()) {
            draws.put(phase, draws(layout, phase));
            sweep(phase, draws.get(phase));
        }
    }

    /** @param feeders by panel; one that is missing counts for nothing */
    static StepDips of(Layout layout, Impedance source, Map<String, Impedance> feeders) {
        return new StepDips(layout, source, feeders);
    }

    /** Every switch-on that a node and phase notices, in time. */
    List<Step> steps(String node, Phase phase) {
        return List.copyOf(at(node, phase).values());
    }

    /** The steps after {@code seconds} that a panel notices and that are deeper than {@code percent}, deepest first. */
    List<Step> deeperAfter(String panel, Phase phase, double seconds, double percent) {
        return java.util.stream.Stream.of(at(panel, phase), at(NodeFigures.SUPPLY, phase))
                .flatMap(each -> each.tailMap(seconds, false).values().stream())
                .filter(step -> step.totalPercent() > percent)
                .sorted(Comparator.comparingDouble(Step::totalPercent).reversed())
                .toList();
    }

    /** How a step's dip dies down if nothing else is switched. */
    DipDecay decay(Step step) {
        return decays.computeIfAbsent(step, this::decayOf);
    }

    private DipDecay decayOf(Step step) {
        double now = step.atSeconds() - toleranceSeconds;
        List<double[]> parts = new ArrayList<>();
        for (Draw draw : draws.get(step.phase())) {
            if (draw.startSeconds() > now + 1e-12) {
                break;
            }
            double amps = draw.excessAt(now, toleranceSeconds);
            boolean isHere = draw.panel().equals(step.node());
            double perAmp = perSourceAmp + (isHere ? draw.ways() * perFeederAmp.getOrDefault(step.node(), 0.0) : 0);
            if (amps > NOTHING_RATIO * draw.excessAmps()) {
                parts.add(new double[] {perAmp * amps, draw.halfSeconds()});
            }
            if (draw.startSeconds() >= now - 1e-12) {
                parts.add(new double[] {perAmp * draw.idleAmps(), Double.POSITIVE_INFINITY});
            }
        }
        return new DipDecay(
                parts.stream().mapToDouble(part -> part[0]).toArray(),
                parts.stream().mapToDouble(part -> part[1]).toArray(),
                halfCycleSeconds);
    }

    private TreeMap<Double, Step> at(String node, Phase phase) {
        return steps.getOrDefault(node, Map.of()).getOrDefault(phase, new TreeMap<>());
    }

    private List<Draw> draws(Layout layout, Phase phase) {
        double frequency = layout.project().supply().frequencyHertz();
        List<Draw> all = new ArrayList<>();
        for (Placement each : layout.placements()) {
            if (each.fits() && each.phases().contains(phase)) {
                Load load = each.load();
                double neutral = each.panel().orElseThrow().neutralFactor();
                double excess = Math.max(0, load.inrushAmps() - Math.sqrt(2) * load.idleAmps());
                double half = load.inrushHalfMillis() / 1000;
                boolean isSequenced = each.onSeconds().isPresent();
                double on = each.onSeconds().orElse(Double.NEGATIVE_INFINITY);
                all.add(new Draw(
                        load.id(),
                        each.assignment().panel(),
                        on - toleranceSeconds,
                        on,
                        isSequenced ? TripEquivalent.pulseAmps(excess, half, frequency) : 0,
                        load.idleAmps(),
                        half,
                        load.poles() == 1 ? 1 + 1 / neutral : 1));
            }
        }
        all.sort(Comparator.comparingDouble(Draw::startSeconds));
        return all;
    }

    private void sweep(Phase phase, List<Draw> inOrder) {
        double steady = 0;
        Map<String, Double> steadyHere = new HashMap<>();
        List<Draw> active = new ArrayList<>();
        for (int next = 0; next < inOrder.size(); ) {
            Draw first = inOrder.get(next);
            double now = first.startSeconds();
            double steadyBefore = steady;
            Map<String, Double> steadyHereBefore = new HashMap<>(steadyHere);
            for (; next < inOrder.size() && inOrder.get(next).startSeconds() <= now + 1e-12; next++) {
                Draw draw = inOrder.get(next);
                steady += draw.idleAmps();
                steadyHere.merge(draw.panel(), draw.ways() * draw.idleAmps(), Double::sum);
                active.add(draw);
            }
            if (now > Double.NEGATIVE_INFINITY) {
                note(phase, first, now, active, steadyBefore, steadyHereBefore);
            }
        }
    }

    private void note(
            Phase phase, Draw first, double now, List<Draw> active, double steady, Map<String, Double> steadyHere) {
        double sum = 0;
        Map<String, Double> here = new HashMap<>();
        for (Draw draw : active) {
            double amps = draw.excessAt(now, toleranceSeconds);
            // The step in idle current of what comes on now is part of the dip.
            double risen = draw.startSeconds() >= now - 1e-12 ? draw.idleAmps() : 0;
            sum += amps + risen;
            here.merge(draw.panel(), draw.ways() * (amps + risen), Double::sum);
        }
        active.removeIf(draw -> draw.excessAt(now, toleranceSeconds) <= NOTHING_RATIO * draw.excessAmps());
        double above = perSourceAmp * sum;
        double steadyAbove = perSourceAmp * steady;
        add(new Step(
                NodeFigures.SUPPLY, phase, first.onSeconds(), first.load(), StepDip.mostPercent(above), steadyAbove));
        here.forEach((panel, amps) -> {
            double perAmp = perFeederAmp.getOrDefault(panel, 0.0);
            double steadyPercent = steadyAbove + perAmp * steadyHere.getOrDefault(panel, 0.0);
            add(new Step(
                    panel,
                    phase,
                    first.onSeconds(),
                    first.load(),
                    StepDip.mostPercent(above + perAmp * amps),
                    steadyPercent));
        });
    }

    private void add(Step step) {
        steps.computeIfAbsent(step.node(), any -> new HashMap<>())
                .computeIfAbsent(step.phase(), any -> new TreeMap<>())
                .merge(step.atSeconds(), step, (a, b) -> a.totalPercent() >= b.totalPercent() ? a : b);
    }
}
