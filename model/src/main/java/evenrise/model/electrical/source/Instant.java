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
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntToDoubleFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

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

    /** Sets of angles whose voltages are kept. */
    private static final int MOST_REMEMBERED = 300;

    private final Plant plant;
    private final UnitDrops units;
    private final Map<String, LineValues> steady;
    private final RadialPlant.Voltages steadyVolts;
    private final Map<String, SteadyDrops> known;
    private final List<Inrush> inrushes;
    private final List<InrushLoad> gear;
    private final Map<Object, Integer> kinds = new LinkedHashMap<>();
    private final Map<Terminals, Set<Integer>> kindsBetween = new HashMap<>();
    private final Map<List<Integer>, AtAngles> byAngles = new HashMap<>();
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
        this(new UnitDrops(plant, terminals, steady.keySet()), steady, known, inrushes);
    }

    private Instant(UnitDrops units, Map<String, LineValues> steady, List<Drawn> known, List<Inrush> inrushes) {
        this(
                units,
                steady,
                known.stream()
                        .collect(Collectors.groupingBy(
                                Drawn::panel,
                                Collectors.collectingAndThen(
                                        Collectors.toList(), each -> SteadyDrops.of(units, each)))),
                inrushes);
    }

    /**
     * @param units of the plant and the terminals that may be asked about
     * @param steady currents of each panel's steady loads; a panel without any is there with none
     * @param known what the same loads drop
     */
    public Instant(
            UnitDrops units, Map<String, LineValues> steady, Map<String, SteadyDrops> known, List<Inrush> inrushes) {
        this.plant = units.plant();
        this.units = units;
        this.steady = steady;
        this.steadyVolts = plant.voltages(draws());
        this.known = Map.copyOf(known);
        this.inrushes = List.copyOf(inrushes);
        Map<Object, Double> amps = new LinkedHashMap<>();
        inrushes.forEach(each -> amps.merge(each.kind(), each.drawn().amps(), Double::sum));
        amps.keySet().stream()
                .sorted(Comparator.<Object>comparingDouble(amps::get).reversed())
                .forEach(kind -> kinds.put(kind, kinds.size()));
        this.gear = InrushLoad.of(plant, inrushes, kinds);
        for (Inrush each : inrushes) {
            for (Terminals at : Terminals.of(each.drawn().phases())) {
                kindsBetween.computeIfAbsent(at, any -> new TreeSet<>()).add(kinds.get(each.kind()));
            }
        }
    }

    /** What the steady loads leave. */
    public double steadyPercent(String node, Terminals at) {
        return percent(steadyVolts(node, at), node, at);
    }

    private double steadyVolts(String node, Terminals at) {
        return at.volts(steadyVolts.at(node)).length();
    }

    /**
     * More than a reading may make of a voltage, and what of it stays as inrush dies down.
     *
     * @param most with all inrush
     * @param lasting with none
     */
    public record Limits(Span most, Span lasting) {}

    /** What {@link #phasors} may say; quick. */
    public Limits limitsByPhasors(String node, Terminals at) {
        if (reach == null) {
            reach = new Reach(units, ranges(), inrushes, kinds);
        }
        return limits(node, at, reach::volts, any -> 0);
    }

    /** What {@link #bound} may say; quick. */
    public Limits limitsByBound(String node, Terminals at) {
        return limits(node, at, ranges()::mostFallVolts, ranges()::unsure);
    }

    private Limits limits(String node, Terminals at, IntToDoubleFunction fall, IntToDoubleFunction lasting) {
        // What feeds it may stand lower than the point itself, which is said to be as low.
        double least = Double.POSITIVE_INFINITY;
        double lastingLeast = Double.POSITIVE_INFINITY;
        for (String each : plant.carrying(node)) {
            int place = units.place(each, at);
            double left = steadyVolts(each, at) - lasting.applyAsDouble(place);
            lastingLeast = Math.min(lastingLeast, left);
            least = Math.min(least, left - fall.applyAsDouble(place));
        }
        // No phasors are above the bound.
        int place = units.place(node, at);
        double lastingGreatest = steadyVolts(node, at) + ranges().unsure(place);
        double greatest = lastingGreatest + ranges().mostRiseVolts(place);
        return new Limits(
                new Span(Math.max(0, percent(least, node, at)), percent(greatest, node, at)),
                new Span(Math.max(0, percent(lastingLeast, node, at)), percent(lastingGreatest, node, at)));
    }

    public Span phasors(String node, Terminals at) {
        return new Span(
                percent(-search(node, at, each -> -leastVolts(each, node, at)), node, at),
                percent(search(node, at, each -> each.volts(node, at).length()), node, at));
    }

    private double leastVolts(AtAngles each, String node, Terminals at) {
        return plant.carrying(node).stream()
                .mapToDouble(carrying -> each.leastVolts(carrying, at, kindsBetween.getOrDefault(at, Set.of())))
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
            stated = new AtAngles(plant, steady, steadyVolts, gear, InrushLoad::lagRadians);
        }
        double least = plant.carrying(node).stream()
                .mapToDouble(each -> stated.volts(each, at).length())
                .min()
                .orElseThrow();
        return percent(least, node, at);
    }

    public Span bound(String node, Terminals at) {
        double least = plant.carrying(node).stream()
                .mapToDouble(each -> ranges().leastVolts(each, at))
                .min()
                .orElseThrow();
        return new Span(percent(least, node, at), percent(ranges().greatestVolts(node, at), node, at));
    }

    private DipBound ranges() {
        if (bound == null) {
            bound = new DipBound(units, steadyVolts, known, together());
        }
        return bound;
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
        if (byAngles.size() > MOST_REMEMBERED) {
            byAngles.clear();
        }
        return byAngles.computeIfAbsent(
                steps, any -> new AtAngles(plant, steady, steadyVolts, gear, each -> STEP * steps.get(each.kind())));
    }

    /** Of each kind the angle at which the sum of its drops lies along the voltage, or against it where that is turned by π. */
    private List<Integer> worst(String node, Terminals at, double turnedRadians) {
        double direction = at.volts(steadyVolts.at(node)).angleRadians() + turnedRadians;
        int place = units.place(node, at);
        double[] real = new double[kinds.size()];
        double[] imaginary = new double[kinds.size()];
        for (Inrush each : inrushes) {
            UnitDrops.Unit unit = units.of(each.drawn().panel(), each.drawn().phases());
            int kind = kinds.get(each.kind());
            real[kind] += each.drawn().amps() * unit.real()[place];
            imaginary[kind] += each.drawn().amps() * unit.imaginary()[place];
        }
        return IntStream.range(0, kinds.size())
                .mapToObj(kind -> step(new Phasor(real[kind], imaginary[kind]), direction))
                .toList();
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
