package evenrise.model.electrical.source;

import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.Phasor;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What {@link DipBound} bounds, load by load and place by place as it is defined, without anything kept between them: each inrush lags the voltage that feeds it by
 * anything between a resistance and a reactance, each by itself, and draws up to its whole current, in proportion to its own
 * voltage where that swells; steady loads draw the currents whose phasors are known, or others by as much as their voltage
 * differs from the nominal one: as an impedance, as a power (whose current at most doubles) or as a current do.
 *
 * <p>A voltage is at least its projection on any direction, and the projection of each inrush's drop is greatest at one angle
 * of its range; so the best of some directions is a bound, without trying all angles together.
 */
final class DipBoundByLoad {
    private static final int ROUNDS = 12;
    private static final int TIGHTER_ROUNDS = 3;

    /** Directions all round. */
    private static final int ROUND = 24;

    private static final double STEP = Math.toRadians(5);
    private static final int STEPS = 12;

    /**
     * A star without neutral: its voltages differ from its centre's by at most 2/√3 as much, relatively, as those between its
     * lines, and the currents of two lines do so by themselves, which between these counts 2/√3 again.
     */
    static final double STAR = 4.0 / 3;

    /** A length is at most so many times its greatest projection on directions that are {@link #STEP} apart. */
    private static final double BETWEEN_DIRECTIONS = 1 / Math.cos(STEP / 2);

    private final Plant plant;
    private final RadialPlant.Voltages steady;
    private final List<Terminals> terminals;
    private final List<Inrush> inrushes = new ArrayList<>();
    private final Map<String, Standing> standing = new HashMap<>();

    /** An inrush's drops, in phase with its own voltage. */
    private final class Inrush {
        final Drawn drawn;
        final LineValues most;
        final Map<List<String>, Drops> drops = new HashMap<>();
        final Map<String, Drops> byNode = new HashMap<>();
        double grown;
        double turned;

        Inrush(Drawn drawn) {
            this.drawn = drawn;
            LineValues nominal = plant.nominal(drawn.panel());
            LineValues lines = drawn.lines(nominal);
            LineValues whole = plant.dropAt(drawn.panel(), drawn.panel(), lines);
            Terminals own = Terminals.of(drawn.phases()).get(0);
            double part = own.volts(whole).length() / own.volts(nominal).length();
            // More than a fault's current does not flow.
            this.most = lines.times(new Phasor(part > 1 ? 1 / part : 1, 0));
        }

        /** Points in the same zones that it touches see the same. */
        Drops drops(String node) {
            return byNode.computeIfAbsent(node, this::dropsAt);
        }

        private Drops dropsAt(String node) {
            List<String> touched = plant.zones(node).stream()
                    .filter(zone -> plant.touches(zone, drawn.panel()))
                    .toList();
            return drops.computeIfAbsent(touched, any -> new Drops(plant.dropAt(node, drawn.panel(), most)));
        }

        void grow(double by, double turnedRadians) {
            grown = by;
            turned = turnedRadians;
        }

        double dropVolts(String panel, int at) {
            return drops(panel).volts[at];
        }

        /** The most of a drop along a direction, over the range of its angle. */
        double along(String panel, int at, double direction) {
            Drops drops = drops(panel);
            double ahead = drops.radians[at] - direction;
            ahead -= 2 * Math.PI * Math.rint(ahead / (2 * Math.PI));
            double before = Math.max(0, -turned - ahead);
            double behind = Math.max(0, ahead - Math.PI / 2 - turned);
            double behindATurn = Math.max(0, ahead + 2 * Math.PI - Math.PI / 2 - turned);
            double apart = Math.min(Math.max(before, behind), behindATurn);
            return apart >= Math.PI / 2 ? 0 : grown * drops.volts[at] * Math.cos(apart);
        }
    }

    /** Of each of the terminals. */
    private final class Drops {
        final double[] volts = new double[terminals.size()];
        final double[] radians = new double[terminals.size()];

        Drops(LineValues drop) {
            for (int i = 0; i < volts.length; i++) {
                Phasor phasor = terminals.get(i).volts(drop);
                volts[i] = phasor.length();
                radians[i] = phasor.angleRadians();
            }
        }
    }

    /** Sums of the magnitudes of the steady drops of one panel's loads, and how far its voltages may lie from nominal. */
    private final class Standing {
        final String panel;
        final List<Drawn> known = new ArrayList<>();
        final Map<String, double[]> byZone = new HashMap<>();
        final Set<Terminals> used = new HashSet<>();
        double away;

        Standing(String panel) {
            this.panel = panel;
        }

        double volts(String node, int at) {
            double sum = 0;
            for (String zone : plant.zones(node)) {
                sum += plant.touches(zone, panel) ? byZone.computeIfAbsent(zone, this::sums)[at] : 0;
            }
            return sum;
        }

        private double[] sums(String zone) {
            double[] sums = new double[terminals.size()];
            for (Drawn each : known) {
                LineValues drop = plant.drop(zone, panel, each.lines(plant.nominal(panel)));
                for (int i = 0; i < sums.length; i++) {
                    sums[i] += star(each) * terminals.get(i).volts(drop).length();
                }
            }
            return sums;
        }

        double mayDiffer() {
            return away < 0.5 ? away / (1 - away) : 1;
        }
    }

    /**
     * @param steady voltages with the currents of all steady loads and no inrush
     * @param known the steady loads' currents
     */
    DipBoundByLoad(
            Plant plant,
            List<Terminals> terminals,
            RadialPlant.Voltages steady,
            List<Drawn> known,
            List<Drawn> inrushes) {
        this.plant = plant;
        this.terminals = terminals;
        this.steady = steady;
        steady.panels().keySet().stream()
                .filter(plant::isPanel)
                .forEach(panel -> standing.put(panel, new Standing(panel)));
        known.forEach(this::addStanding);
        inrushes.forEach(drawn -> this.inrushes.add(new Inrush(drawn)));
        for (int round = 0; round < ROUNDS; round++) {
            growApart();
        }
        for (Inrush each : this.inrushes) {
            double others = 0;
            for (Terminals at : Terminals.of(each.drawn.phases())) {
                others = Math.max(others, away(each.drawn.panel(), at, each));
            }
            each.grow(1 + others * star(each.drawn), Math.asin(Math.min(1, others * star(each.drawn))));
        }
        for (int round = 0; round < TIGHTER_ROUNDS && !this.inrushes.isEmpty(); round++) {
            tighten();
        }
    }

    /** What holds with the ranges found so far gives narrower ones. */
    private void tighten() {
        for (Map.Entry<String, Standing> each : standing.entrySet()) {
            double most = 0;
            for (Terminals at : each.getValue().used) {
                most = Math.max(most, farthest(each.getKey(), at));
            }
            each.getValue().away = Math.min(each.getValue().away, most);
        }
        for (Inrush each : inrushes) {
            double grown = 0;
            double turned = 0;
            for (Terminals at : Terminals.of(each.drawn.phases())) {
                String panel = each.drawn.panel();
                double nominal = at.volts(plant.nominal(panel)).length();
                double unturned = at.volts(plant.nominal(panel)).angleRadians();
                double least = projection(panel, at, unturned + Math.PI, each);
                double aside = Math.max(
                        projection(panel, at, unturned + Math.PI / 2, each),
                        projection(panel, at, unturned - Math.PI / 2, each));
                grown = Math.max(grown, greatest(panel, at, each) / nominal);
                turned = Math.max(turned, least < 0 ? Math.atan2(Math.max(0, aside), -least) : Math.PI / 2);
            }
            if (each.drawn.phases().size() < 3) {
                each.grow(Math.min(each.grown, Math.max(1, grown)), Math.min(each.turned, turned));
            }
        }
    }

    /** Of a voltage from nominal, as a part of it. */
    private double farthest(String panel, Terminals at) {
        Phasor nominal = at.volts(plant.nominal(panel));
        double most = 0;
        for (int i = 0; i < ROUND; i++) {
            double direction = i * 2 * Math.PI / ROUND;
            Phasor along = Phasor.polar(1, direction);
            double ofNominal = nominal.real() * along.real() + nominal.imaginary() * along.imaginary();
            most = Math.max(most, projection(panel, at, direction, null) - ofNominal);
        }
        return most / Math.cos(Math.PI / ROUND) / nominal.length();
    }

    /** The most of a voltage along a direction. */
    private double projection(String panel, Terminals at, double direction, Inrush without) {
        Phasor volts = at.volts(steady.at(panel));
        double most = volts.length() * Math.cos(volts.angleRadians() - direction) + unsure(panel, at);
        int index = terminals.indexOf(at);
        for (Inrush each : inrushes) {
            if (each != without) {
                most += each.along(panel, index, direction + Math.PI);
            }
        }
        return most;
    }

    private static double star(Drawn drawn) {
        return drawn.phases().size() == 3 ? STAR : 1;
    }

    double leastVolts(String panel, Terminals at) {
        Phasor volts = at.volts(steady.at(panel));
        int index = terminals.indexOf(at);
        double best = 0;
        for (int i = -STEPS; i <= STEPS; i++) {
            double direction = volts.angleRadians() + i * STEP;
            double left = volts.length() * Math.cos(i * STEP);
            for (Inrush each : inrushes) {
                left -= each.along(panel, index, direction);
            }
            best = Math.max(best, left);
        }
        return Math.max(0, best - unsure(panel, at));
    }

    double greatestVolts(String panel, Terminals at) {
        return greatest(panel, at, null);
    }

    private double greatest(String panel, Terminals at, Inrush without) {
        Phasor volts = at.volts(steady.at(panel));
        double most = volts.length() + unsure(panel, at);
        for (int i = -STEPS; i <= STEPS && !inrushes.isEmpty(); i++) {
            double along = projection(panel, at, volts.angleRadians() + i * STEP, without);
            most = Math.max(most, along * BETWEEN_DIRECTIONS);
        }
        return most;
    }

    private void addStanding(Drawn known) {
        Standing here = standing.get(known.panel());
        here.used.addAll(Terminals.of(known.phases()));
        here.known.add(known);
    }

    private void growApart() {
        for (Map.Entry<String, Standing> each : standing.entrySet()) {
            double most = 0;
            for (Terminals at : terminals) {
                boolean isThere = at.volts(plant.nominal(each.getKey())).length() > 0;
                most = isThere ? Math.max(most, away(each.getKey(), at, null)) : most;
            }
            each.getValue().away = Math.min(1, most);
        }
    }

    /** How far a voltage may lie from its nominal phasor, as a part of it, whatever one inrush does. */
    private double away(String panel, Terminals at, Inrush without) {
        Phasor nominal = at.volts(plant.nominal(panel));
        double volts = at.volts(steady.at(panel)).minus(nominal).length() + unsure(panel, at);
        for (Inrush each : inrushes) {
            if (each != without) {
                double grown = 1 + star(each.drawn) * standing.get(each.drawn.panel()).away;
                volts += grown * each.dropVolts(panel, terminals.indexOf(at));
            }
        }
        return Math.min(1, volts / nominal.length());
    }

    /** What steady loads may draw otherwise than their phasors say. */
    private double unsure(String panel, Terminals at) {
        int index = terminals.indexOf(at);
        double volts = 0;
        for (Map.Entry<String, Standing> each : standing.entrySet()) {
            Standing loads = each.getValue();
            volts += loads.mayDiffer() * loads.volts(panel, index);
        }
        return volts;
    }
}
