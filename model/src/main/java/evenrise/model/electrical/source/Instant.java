package evenrise.model.electrical.source;

import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.Phasor;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/**
 * The voltages of a plant at one instant of a sequence: steady loads draw known phasors, inrushes are impedances that would
 * draw their currents at nominal voltage. Their angle is unknown. The phasor figures are those of the worst angles, from a
 * resistance to a reactance, alike for gear of a kind, as {@link #search} finds them; the bound is whatever each load does by
 * itself, see {@link DipBound}.
 *
 * <p>Two credits are not taken. Between the terminals that an inrush is drawn from, all of it flows, and all of its kind,
 * however low the voltage, as no inrush is quite an impedance. And a point is never said to be less low than what feeds it at its voltage, as what lifts a phase through a
 * neutral may not be there.
 */
public final class Instant {
    private static final double STEP = Math.toRadians(10);
    private static final int STEPS = 9;

    /** Where two turn together. */
    private static final int STRIDE = 3;

    /** Kinds, the greatest first, that are turned by themselves. */
    private static final int MOST_TURNED = 5;

    private final Plant plant;
    private final List<Terminals> terminals;
    private final Map<String, LineValues> steady;
    private final List<Drawn> known;
    private final List<Inrush> inrushes;
    private final List<Object> kinds;
    private final AtAngles withoutInrush;
    private final Map<List<Integer>, AtAngles> byAngles = new LinkedHashMap<>();
    private final Map<List<String>, Map<Drawn, double[]>> units;
    private AtAngles stated;
    private DipBound bound;
    private Reach reach;

    /** Least and greatest voltage, in percent of the nominal one. */
    public record Span(double leastPercent, double greatestPercent) {
        public double lowPercent() {
            return 100 - leastPercent;
        }

        public double highPercent() {
            return greatestPercent - 100;
        }
    }

    /** One instant alone; see the other. */
    public Instant(
            Plant plant,
            List<Terminals> terminals,
            Map<String, LineValues> steady,
            List<Drawn> known,
            List<Inrush> inrushes) {
        this(plant, terminals, steady, known, inrushes, new HashMap<>());
    }

    /**
     * @param terminals all that may be asked about
     * @param steady currents of each panel's steady loads; a panel without any is there with none
     * @param known the same loads one by one
     * @param units what one ampere drops, kept from instant to instant of one plant with these terminals
     */
    public Instant(
            Plant plant,
            List<Terminals> terminals,
            Map<String, LineValues> steady,
            List<Drawn> known,
            List<Inrush> inrushes,
            Map<List<String>, Map<Drawn, double[]>> units) {
        this.plant = plant;
        this.terminals = terminals;
        this.steady = steady;
        this.known = List.copyOf(known);
        this.inrushes = List.copyOf(inrushes);
        this.units = units;
        Map<Object, Double> amps = new LinkedHashMap<>();
        inrushes.forEach(each -> amps.merge(each.kind(), each.drawn().amps(), Double::sum));
        this.kinds = amps.keySet().stream()
                .sorted(Comparator.<Object>comparingDouble(amps::get).reversed())
                .toList();
        this.withoutInrush = new AtAngles(plant, steady, List.of(), each -> 0);
    }

    /** What the steady loads leave. */
    public double steadyPercent(String node, Terminals at) {
        return percent(withoutInrush.volts(node, at).length(), node, at);
    }

    /**
     * By how much the voltage may at most be lower or higher than {@link #steadyPercent}, by phasors or by the bound: every
     * inrush at twice its current, as none meets more than twice its voltage (of a star without neutral at more), and every steady load at twice its own,
     * whatever their angles. Quick and far away.
     */
    public double reachPercent(String node, Terminals at) {
        if (reach == null) {
            reach = new Reach(plant, terminals, units);
            inrushes.forEach(
                    each -> reach.add(each.drawn(), each.drawn().phases().size() == 3 ? 1 + DipBound.STAR : 2));
            known.forEach(each -> reach.add(each, DipBound.STAR));
        }
        double here = withoutInrush.volts(node, at).length();
        // What feeds it may stand lower than the point itself, which is said to be as low.
        double most = plant.carrying(node).stream()
                .mapToDouble(each -> reach.volts(each, at)
                        + here
                        - withoutInrush.volts(each, at).length())
                .max()
                .orElseThrow();
        return percent(most, node, at);
    }

    public Span phasors(String node, Terminals at) {
        return new Span(
                percent(-search(node, at, each -> -leastVolts(each, node, at)), node, at),
                percent(search(node, at, each -> each.volts(node, at).length()), node, at));
    }

    private double leastVolts(AtAngles each, String node, Terminals at) {
        return plant.carrying(node).stream()
                .mapToDouble(carrying -> each.leastVolts(carrying, at))
                .min()
                .orElseThrow();
    }

    /** The most of a figure among the candidates, where the two greatest kinds turn, and then one kind after the other. */
    private double search(String node, Terminals at, ToDoubleFunction<AtAngles> figure) {
        List<Integer> best = most(candidates(node, at), figure);
        if (kinds.size() > 1) {
            List<List<Integer>> turned = new ArrayList<>(List.of(best));
            for (int first = 0; first <= STEPS; first += STRIDE) {
                for (int second = 0; second <= STEPS; second += STRIDE) {
                    turned.add(turned(turned(best, 0, first), 1, second));
                }
            }
            best = most(turned, figure);
        }
        for (int kind = 0; kinds.size() > 1 && kind < Math.min(kinds.size(), MOST_TURNED); kind++) {
            List<List<Integer>> turned = new ArrayList<>(List.of(best));
            for (int step = 0; step <= STEPS; step += STRIDE) {
                turned.add(turned(best, kind, step));
            }
            best = most(turned, figure);
        }
        return figure.applyAsDouble(at(best));
    }

    private List<Integer> most(List<List<Integer>> candidates, ToDoubleFunction<AtAngles> figure) {
        return candidates.stream()
                .max(Comparator.comparingDouble(each -> figure.applyAsDouble(at(each))))
                .orElseThrow();
    }

    private static List<Integer> turned(List<Integer> steps, int kind, int step) {
        List<Integer> turned = new ArrayList<>(steps);
        turned.set(kind, step);
        return turned;
    }

    /** By phasors, each inrush at the power factor that its load states. */
    public double statedPercent(String node, Terminals at) {
        if (stated == null) {
            stated = new AtAngles(plant, steady, inrushes, Inrush::lagRadians);
        }
        double least = plant.carrying(node).stream()
                .mapToDouble(each -> stated.volts(each, at).length())
                .min()
                .orElseThrow();
        return percent(least, node, at);
    }

    public Span bound(String node, Terminals at) {
        if (bound == null) {
            RadialPlant.Voltages volts = plant.voltages(draws());
            bound = new DipBound(plant, terminals, volts, known, together());
        }
        double least = plant.carrying(node).stream()
                .mapToDouble(each -> bound.leastVolts(each, at))
                .min()
                .orElseThrow();
        return new Span(percent(least, node, at), percent(bound.greatestVolts(node, at), node, at));
    }

    /** One angle for all, and the angles that pull a voltage down, and lift it, most if none of them moved another. */
    private List<List<Integer>> candidates(String node, Terminals at) {
        List<List<Integer>> all = new ArrayList<>();
        for (int i = 0; i <= STEPS; i++) {
            all.add(Collections.nCopies(kinds.size(), i));
        }
        if (kinds.size() > 1) {
            all.add(worst(node, at, 0));
            all.add(worst(node, at, Math.PI));
            plant.carrying(node).stream().skip(1).forEach(each -> all.add(worst(each, at, 0)));
        }
        return all;
    }

    private AtAngles at(List<Integer> steps) {
        return byAngles.computeIfAbsent(
                steps,
                any -> new AtAngles(plant, steady, inrushes, each -> STEP * steps.get(kinds.indexOf(each.kind()))));
    }

    /** Of each kind the angle at which the sum of its drops lies along the voltage, or against it where that is turned by π. */
    private List<Integer> worst(String node, Terminals at, double turnedRadians) {
        double direction = withoutInrush.volts(node, at).angleRadians() + turnedRadians;
        Map<Object, Phasor> drops = new HashMap<>();
        for (Inrush each : inrushes) {
            String panel = each.drawn().panel();
            LineValues drop = plant.dropAt(node, panel, each.drawn().lines(plant.nominal(panel)));
            drops.merge(each.kind(), at.volts(drop), Phasor::plus);
        }
        return kinds.stream().map(kind -> step(drops.get(kind), direction)).toList();
    }

    private static int step(Phasor drop, double direction) {
        double ahead = drop.angleRadians() - direction;
        int best = 0;
        for (int i = 1; i <= STEPS; i++) {
            if (Math.cos(ahead - i * STEP) > Math.cos(ahead - best * STEP)) {
                best = i;
            }
        }
        return best;
    }

    private Map<String, RadialPlant.Draw> draws() {
        Map<String, RadialPlant.Draw> draws = new LinkedHashMap<>();
        steady.forEach((panel, amps) -> draws.put(panel, RadialPlant.Draw.of(amps)));
        return draws;
    }

    /** Inrushes on the same lines of a panel are one: their sum lags by some angle of the same range. */
    private List<Drawn> together() {
        Map<Drawn, Double> sums = new LinkedHashMap<>();
        for (Inrush each : inrushes) {
            Drawn drawn = each.drawn();
            sums.merge(
                    new Drawn(drawn.panel(), drawn.phases().stream().sorted().toList(), 0), drawn.amps(), Double::sum);
        }
        List<Drawn> together = new ArrayList<>();
        sums.forEach((place, amps) -> together.add(new Drawn(place.panel(), place.phases(), amps)));
        return together;
    }

    private double percent(double volts, String node, Terminals at) {
        return 100 * volts / at.volts(plant.nominal(node)).length();
    }
}
