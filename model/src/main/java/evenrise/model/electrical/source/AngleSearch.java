package evenrise.model.electrical.source;

import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.Phasor;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * The worst angles of inrush at one instant, from a resistance to a reactance, alike for gear of a kind. One angle for all is
 * tried, those that pull most if none moved another, then the two greatest kinds together, and one kind after the other.
 *
 * <p>Two credits are not taken. Between the terminals that an inrush is drawn from, all of it flows, and all of its kind,
 * however low the voltage, as no inrush is quite an impedance. And a point is never said to be less low than what feeds it at
 * its voltage, as what lifts a phase through a neutral may not be there.
 */
final class AngleSearch {
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
    private final RadialPlant.Voltages steadyVolts;
    private final List<Inrush> inrushes;
    private final Map<Object, Integer> kinds;
    private final List<InrushLoad> gear;
    private final Plant.Response response;
    private final Map<Terminals, Set<Integer>> kindsBetween = new HashMap<>();
    private final Map<List<Integer>, AtAngles> byAngles = new HashMap<>();
    private AtAngles stated;

    /**
     * @param steady currents of each panel's steady loads
     * @param steadyVolts that they leave
     * @param kinds of gear by their place, that which draws most first
     */
    AngleSearch(
            UnitDrops units,
            Map<String, LineValues> steady,
            RadialPlant.Voltages steadyVolts,
            List<Inrush> inrushes,
            Map<Object, Integer> kinds) {
        this.plant = units.plant();
        this.units = units;
        this.steadyVolts = steadyVolts;
        this.inrushes = inrushes;
        this.kinds = kinds;
        this.gear = InrushLoad.of(plant, inrushes, kinds);
        this.response = plant.response(
                steady,
                steadyVolts,
                gear.stream().map(InrushLoad::panel).distinct().toList());
        for (Inrush each : inrushes) {
            for (Terminals at : Terminals.of(each.drawn().phases())) {
                kindsBetween.computeIfAbsent(at, any -> new TreeSet<>()).add(kinds.get(each.kind()));
            }
        }
    }

    /**
     * The least voltage.
     *
     * @param enough below which any voltage may be told that some angles leave
     */
    double leastVolts(String node, Terminals at, double enough) {
        return -most(node, at, each -> -leastVolts(each, node, at), -enough);
    }

    /**
     * The greatest voltage.
     *
     * @param enough above which any voltage may be told that some angles leave
     */
    double greatestVolts(String node, Terminals at, double enough) {
        return most(node, at, each -> each.volts(node, at).length(), enough);
    }

    /** Each inrush at the power factor that its load states. */
    double statedVolts(String node, Terminals at) {
        if (stated == null) {
            stated = new AtAngles(plant, response, gear, InrushLoad::lagRadians);
        }
        return plant.carrying(node).stream()
                .mapToDouble(each -> stated.volts(each, at).length())
                .min()
                .orElseThrow();
    }

    private double leastVolts(AtAngles each, String node, Terminals at) {
        double least = Double.POSITIVE_INFINITY;
        for (String carrying : plant.carrying(node)) {
            least = Math.min(least, each.leastVolts(carrying, at, kindsBetween.getOrDefault(at, Set.of())));
        }
        return least;
    }

    /** Of a figure, or the first that is more than enough: what is tried further is never less. */
    private double most(String node, Terminals at, ToDoubleFunction<AtAngles> figure, double enough) {
        Best best = new Best(figure, enough);
        best.tryAll(candidates(node, at));
        if (kinds.size() > 1 && !best.isEnough()) {
            List<Integer> from = best.steps;
            for (int first = 0; first <= STEPS; first += STRIDE) {
                for (int second = 0; second <= STEPS; second += STRIDE) {
                    best.tryOne(turned(turned(from, 0, first), 1, second));
                }
            }
        }
        for (int kind = 0; kinds.size() > 1 && kind < Math.min(kinds.size(), MOST_TURNED); kind++) {
            List<Integer> from = best.steps;
            for (int step = 0; step <= STEPS; step += STRIDE) {
                best.tryOne(turned(from, kind, step));
            }
        }
        return best.amount;
    }

    /** The first of those with the greatest figure. */
    private final class Best {
        private final ToDoubleFunction<AtAngles> figure;
        private final double enough;
        private List<Integer> steps = List.of();
        private double amount = Double.NEGATIVE_INFINITY;

        Best(ToDoubleFunction<AtAngles> figure, double enough) {
            this.figure = figure;
            this.enough = enough;
        }

        boolean isEnough() {
            return amount > enough;
        }

        void tryAll(List<List<Integer>> all) {
            all.forEach(this::tryOne);
        }

        void tryOne(List<Integer> candidate) {
            if (isEnough()) {
                return;
            }
            double so = figure.applyAsDouble(at(candidate));
            if (so > amount) {
                amount = so;
                steps = candidate;
            }
        }
    }

    private static List<Integer> turned(List<Integer> steps, int kind, int step) {
        List<Integer> turned = new ArrayList<>(steps);
        turned.set(kind, step);
        return turned;
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
                steps, any -> new AtAngles(plant, response, gear, each -> STEP * steps.get(each.kind())));
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
}
