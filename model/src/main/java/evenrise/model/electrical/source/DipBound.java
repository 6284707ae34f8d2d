package evenrise.model.electrical.source;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The least and the greatest voltage that currents of unknown angle can leave. Each inrush lags the voltage that feeds it by
 * anything between a resistance and a reactance, each by itself, and draws up to its whole current, in proportion to its own
 * voltage where that swells; steady loads draw the currents whose phasors are known, or others by as much as their voltage
 * differs from the nominal one: as an impedance, as a power (whose current at most doubles) or as a current do.
 *
 * <p>A voltage is at least its projection on any direction, and the projection of each inrush's drop is greatest at one angle
 * of its range; so the best of some directions is a bound, without trying all angles together.
 *
 * <p>How far voltages may lie from nominal is found at once; narrower ranges, which cost more, when a bound is asked for.
 */
final class DipBound {
    private static final int ROUNDS = 12;
    private static final int TIGHTER_ROUNDS = 3;

    /** A part of the voltage that makes no difference. */
    private static final double SAME = 1e-14;

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

    private static final double[] ROUND_REAL = new double[ROUND];
    private static final double[] ROUND_IMAGINARY = new double[ROUND];

    static {
        for (int i = 0; i < ROUND; i++) {
            ROUND_REAL[i] = Math.cos(i * 2 * Math.PI / ROUND);
            ROUND_IMAGINARY[i] = Math.sin(i * 2 * Math.PI / ROUND);
        }
    }

    private final UnitDrops units;
    private final List<InrushRange> inrushes = new ArrayList<>();
    private final Map<String, Standing> standing = new HashMap<>();
    private final Standing[] behind;
    private final SteadyVolts steady;
    private final double[] real;
    private final double[] imaginary;
    private final double[] volts;

    /** By place, kept as panels' voltages are found to lie further away, or less. */
    private final double[] unsure;

    private boolean isTight;

    /** Of one panel, and how far its voltages may lie from nominal. */
    private static final class Standing {
        final SteadyDrops drops;
        final int[] places;
        final int[] used;
        double away;

        Standing(UnitDrops units, String panel, SteadyDrops drops) {
            this.drops = drops;
            this.places = units.terminals().stream()
                    .mapToInt(at -> units.place(panel, at))
                    .filter(place -> units.nominalVolts(place) > 0)
                    .toArray();
            this.used =
                    drops.used().stream().mapToInt(at -> units.place(panel, at)).toArray();
        }

        void moves(double to, double[] unsure) {
            double more = mayDiffer(to) - mayDiffer(away);
            away = to;
            if (more != 0 && !drops.isNone()) {
                drops.add(more, unsure);
            }
        }

        private static double mayDiffer(double away) {
            return away < 0.5 ? away / (1 - away) : 1;
        }
    }

    /**
     * @param steady voltages with the currents of all steady loads and no inrush
     * @param known what the steady loads of each panel drop
     */
    DipBound(UnitDrops units, SteadyVolts steady, Map<String, SteadyDrops> known, List<Drawn> inrushes) {
        this.units = units;
        this.steady = steady;
        this.real = steady.real();
        this.imaginary = steady.imaginary();
        this.volts = steady.lengths();
        this.unsure = new double[units.places()];
        steady.panels()
                .forEach(panel ->
                        standing.put(panel, new Standing(units, panel, known.getOrDefault(panel, SteadyDrops.NONE))));
        for (Drawn each : inrushes) {
            this.inrushes.add(new InrushRange(each, units.of(each.panel(), each.phases())));
        }
        this.behind = inrushes.stream().map(each -> standing.get(each.panel())).toArray(Standing[]::new);
        growApart();
        for (InrushRange each : this.inrushes) {
            double others = 0;
            for (int place : each.ownPlaces()) {
                others = Math.max(others, away(place, each));
            }
            others *= each.star();
            each.grow(1 + others, Math.asin(Math.min(1, others)));
        }
    }

    static double star(Drawn drawn) {
        return drawn.phases().size() == 3 ? STAR : 1;
    }

    /** How far a panel's voltages may lie from nominal, as a part of it. */
    double away(String panel) {
        return standing.get(panel).away;
    }

    /** The least voltage is lower than the steady one by no more than {@link #unsure} and this; quick. */
    double mostFallVolts(int place) {
        double most = 0;
        for (InrushRange each : inrushes) {
            most += each.along(place, real[place] / volts[place], imaginary[place] / volts[place]);
        }
        return most;
    }

    /** The greatest voltage is higher than the steady one by no more than {@link #unsure} and this; quick. */
    double mostRiseVolts(int place) {
        return (BETWEEN_DIRECTIONS - 1) * (volts[place] + unsure(place))
                + BETWEEN_DIRECTIONS * mostRiseByInrushVolts(place);
    }

    /**
     * The same where steady loads draw what their phasors say, and no directions are left out. Along directions too far from
     * the steady voltage, all drops together do not make up for what is lost of that.
     */
    double mostRiseByInrushVolts(int place) {
        double drops = 0;
        for (InrushRange each : inrushes) {
            drops += each.grown() * each.dropVolts(place);
        }
        double within = Math.acos(Math.max(-1, 1 - drops / volts[place]));
        double most = 0;
        for (int k = 0; k < inrushes.size() && drops > 0; k++) {
            most += inrushes.get(k)
                    .alongAbout(place, -real[place] / volts[place], -imaginary[place] / volts[place], within);
        }
        return most;
    }

    double leastVolts(String node, Terminals at) {
        tighten();
        int place = units.place(node, at);
        double angle = Math.atan2(imaginary[place], real[place]);
        double best = 0;
        for (int i = -STEPS; i <= STEPS; i++) {
            double along = Math.cos(angle + i * STEP);
            double across = Math.sin(angle + i * STEP);
            double left = volts[place] * Math.cos(i * STEP);
            for (InrushRange each : inrushes) {
                left -= each.along(place, along, across);
            }
            best = Math.max(best, left);
        }
        return Math.max(0, best - unsure(place));
    }

    double greatestVolts(String node, Terminals at) {
        tighten();
        return greatest(units.place(node, at), null);
    }

    private void growApart() {
        boolean hasGrown = true;
        for (int round = 0; round < ROUNDS && hasGrown; round++) {
            hasGrown = false;
            for (Standing each : standing.values()) {
                double most = 0;
                for (int place : each.places) {
                    most = Math.max(most, away(place, null));
                }
                hasGrown |= most - each.away > SAME;
                each.moves(most, unsure);
            }
        }
    }

    /** How far a voltage may lie from its nominal phasor, as a part of it, whatever one inrush does. */
    private double away(int place, InrushRange without) {
        double sum = steady.awayVolts(place) + unsure[place];
        for (int k = 0; k < behind.length; k++) {
            InrushRange each = inrushes.get(k);
            if (each != without) {
                sum += (1 + each.star() * behind[k].away) * each.dropVolts(place);
            }
        }
        return Math.min(1, sum / units.nominalVolts(place));
    }

    /** What holds with the ranges found so far gives narrower ones. */
    private void tighten() {
        for (int round = 0; round < TIGHTER_ROUNDS && !isTight && !inrushes.isEmpty(); round++) {
            for (Standing each : standing.values()) {
                double most = 0;
                for (int place : each.used) {
                    most = Math.max(most, farthest(place));
                }
                each.moves(Math.min(each.away, most), unsure);
            }
            inrushes.forEach(this::narrow);
        }
        isTight = true;
    }

    private void narrow(InrushRange each) {
        double grown = 0;
        double turned = 0;
        for (int place : each.ownPlaces()) {
            double nominal = units.nominalVolts(place);
            double along = units.nominalReal(place) / nominal;
            double across = units.nominalImaginary(place) / nominal;
            double unsure = unsure(place);
            double least = projection(place, -along, -across, each, unsure);
            double aside = Math.max(
                    projection(place, -across, along, each, unsure), projection(place, across, -along, each, unsure));
            grown = Math.max(grown, greatest(place, each) / nominal);
            turned = Math.max(turned, least < 0 ? Math.atan2(Math.max(0, aside), -least) : Math.PI / 2);
        }
        if (each.drawn().phases().size() < 3) {
            each.grow(Math.min(each.grown(), Math.max(1, grown)), Math.min(each.turned(), turned));
        }
    }

    /** Of a voltage from nominal, as a part of it. */
    private double farthest(int place) {
        double unsure = unsure(place);
        double most = 0;
        for (int i = 0; i < ROUND; i++) {
            double ofNominal =
                    units.nominalReal(place) * ROUND_REAL[i] + units.nominalImaginary(place) * ROUND_IMAGINARY[i];
            most = Math.max(most, projection(place, ROUND_REAL[i], ROUND_IMAGINARY[i], null, unsure) - ofNominal);
        }
        return most / Math.cos(Math.PI / ROUND) / units.nominalVolts(place);
    }

    /** The most of a voltage along a direction. */
    private double projection(int place, double along, double across, InrushRange without, double unsure) {
        double most = real[place] * along + imaginary[place] * across + unsure;
        for (InrushRange each : inrushes) {
            if (each != without) {
                most += each.along(place, -along, -across);
            }
        }
        return most;
    }

    private double greatest(int place, InrushRange without) {
        double unsure = unsure(place);
        double angle = Math.atan2(imaginary[place], real[place]);
        double most = volts[place] + unsure;
        for (int i = -STEPS; i <= STEPS && !inrushes.isEmpty(); i++) {
            double along = Math.cos(angle + i * STEP);
            double across = Math.sin(angle + i * STEP);
            most = Math.max(most, projection(place, along, across, without, unsure) * BETWEEN_DIRECTIONS);
        }
        return most;
    }

    /** What steady loads may draw otherwise than their phasors say. */
    double unsure(int place) {
        return unsure[place];
    }
}
