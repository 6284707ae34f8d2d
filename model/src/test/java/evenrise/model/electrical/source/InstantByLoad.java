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

/** What {@link Instant} tells, load by load and with the whole plant solved for every set of angles: slow, and plain. */
public final class InstantByLoad {
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
    private final AtAnglesByLoad withoutInrush;
    private final Map<List<Integer>, AtAnglesByLoad> byAngles = new LinkedHashMap<>();
    private AtAnglesByLoad stated;
    private DipBoundByLoad bound;

    /**
     * @param terminals all that may be asked about
     * @param steady currents of each panel's steady loads; a panel without any is there with none
     * @param known the same loads one by one
     */
    public InstantByLoad(
            Plant plant,
            List<Terminals> terminals,
            Map<String, LineValues> steady,
            List<Drawn> known,
            List<Inrush> inrushes) {
        this.plant = plant;
        this.terminals = terminals;
        this.steady = steady;
        this.known = List.copyOf(known);
        this.inrushes = List.copyOf(inrushes);
        Map<Object, Double> amps = new LinkedHashMap<>();
        inrushes.forEach(each -> amps.merge(each.kind(), each.drawn().amps(), Double::sum));
        this.kinds = amps.keySet().stream()
                .sorted(Comparator.<Object>comparingDouble(amps::get).reversed())
                .toList();
        this.withoutInrush = new AtAnglesByLoad(plant, steady, List.of(), each -> 0);
    }

    /** What the steady loads leave. */
    public double steadyPercent(String node, Terminals at) {
        return percent(withoutInrush.volts(node, at).length(), node, at);
    }

    public Instant.Span phasors(String node, Terminals at) {
        return new Instant.Span(
                percent(-search(node, at, each -> -leastVolts(each, node, at)), node, at),
                percent(search(node, at, each -> each.volts(node, at).length()), node, at));
    }

    private double leastVolts(AtAnglesByLoad each, String node, Terminals at) {
        return plant.carrying(node).stream()
                .mapToDouble(carrying -> each.leastVolts(carrying, at))
                .min()
                .orElseThrow();
    }

    /** The most of a figure among the candidates, where the two greatest kinds turn, and then one kind after the other. */
    private double search(String node, Terminals at, ToDoubleFunction<AtAnglesByLoad> figure) {
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

    private List<Integer> most(List<List<Integer>> candidates, ToDoubleFunction<AtAnglesByLoad> figure) {
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
            stated = new AtAnglesByLoad(plant, steady, inrushes, Inrush::lagRadians);
        }
        double least = plant.carrying(node).stream()
                .mapToDouble(each -> stated.volts(each, at).length())
                .min()
                .orElseThrow();
        return percent(least, node, at);
    }

    public Instant.Span bound(String node, Terminals at) {
        if (bound == null) {
            RadialPlant.Voltages volts = plant.voltages(draws());
            bound = new DipBoundByLoad(plant, terminals, volts, known, together());
        }
        double least = plant.carrying(node).stream()
                .mapToDouble(each -> bound.leastVolts(each, at))
                .min()
                .orElseThrow();
        return new Instant.Span(percent(least, node, at), percent(bound.greatestVolts(node, at), node, at));
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

    private AtAnglesByLoad at(List<Integer> steps) {
        return byAngles.computeIfAbsent(
                steps,
                any -> new AtAnglesByLoad(
                        plant, steady, inrushes, each -> STEP * steps.get(kinds.indexOf(each.kind()))));
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
