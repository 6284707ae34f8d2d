package evenrise.model.electrical.source;

import evenrise.model.electrical.LineValues;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntToDoubleFunction;
import java.util.stream.Collectors;

/**
 * The voltages of a plant at one instant of a sequence: steady loads draw known phasors, inrushes are impedances that would
 * draw their currents at nominal voltage. Their angle is unknown. The phasor figures are those of the worst angles, as
 * {@link AngleSearch} finds them; the bound is whatever each load does by itself, see {@link DipBound}.
 */
public final class Instant {
    /** What figures that are reckoned in two ways may differ by. */
    public static final double ROUNDING_PERCENT = 1e-9;

    private final Plant plant;
    private final UnitDrops units;
    private final Map<String, LineValues> steady;
    private final SteadyVolts steadyVolts;
    private final Map<String, SteadyDrops> known;
    private final List<Inrush> inrushes;
    private final Map<Object, Integer> kinds = new LinkedHashMap<>();
    private final Instant first;
    private AngleSearch angles;
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
        this(
                units,
                steady,
                new SteadyVolts(units, units.plant().voltages(draws(steady))),
                Map.copyOf(known),
                inrushes,
                null);
    }

    /** @param first of which this is later; null where it is itself the first */
    private Instant(
            UnitDrops units,
            Map<String, LineValues> steady,
            SteadyVolts steadyVolts,
            Map<String, SteadyDrops> known,
            List<Inrush> inrushes,
            Instant first) {
        this.plant = units.plant();
        this.units = units;
        this.steady = steady;
        this.steadyVolts = steadyVolts;
        this.first = first;
        this.known = known;
        this.inrushes = List.copyOf(inrushes);
        Map<Object, Double> amps = new LinkedHashMap<>();
        inrushes.forEach(each -> amps.merge(each.kind(), each.drawn().amps(), Double::sum));
        amps.keySet().stream()
                .sorted(Comparator.<Object>comparingDouble(amps::get).reversed())
                .forEach(kind -> kinds.put(kind, kinds.size()));
    }

    /** As inrush has died down, and the same loads are steady. */
    public Instant later(List<Inrush> left) {
        return new Instant(units, steady, steadyVolts, known, left, first == null ? this : first);
    }

    /** What the steady loads leave. */
    public double steadyPercent(String node, Terminals at) {
        return percent(steadyVolts(node, at), node, at);
    }

    private double steadyVolts(String node, Terminals at) {
        return steadyVolts.length(units.place(node, at));
    }

    /**
     * More than a reading may make of a voltage, and what of it stays as inrush dies down.
     *
     * @param most with all inrush
     * @param lasting with none
     */
    public record Limits(Span most, Span lasting) {}

    /** What phasors may say; quick. */
    public Limits limitsByPhasors(String node, Terminals at) {
        int place = units.place(node, at);
        double steadily = steadyVolts(node, at);
        // Steady loads draw what they do, so that their part of the bound is none of this.
        double rise = Math.min(reach().volts(place), ranges().mostRiseByInrushVolts(place));
        return limits(node, at, reach()::volts, any -> 0, steadily, steadily + rise);
    }

    /** What the bound may say; quick. */
    public Limits limitsByBound(String node, Terminals at) {
        int place = units.place(node, at);
        double lasting = steadyVolts(node, at) + ranges().unsure(place);
        return limits(
                node, at, ranges()::mostFallVolts, ranges()::unsure, lasting, lasting + ranges().mostRiseVolts(place));
    }

    private Limits limits(
            String node,
            Terminals at,
            IntToDoubleFunction fall,
            IntToDoubleFunction lasting,
            double lastingGreatest,
            double greatest) {
        // What feeds it may stand lower than the point itself, which is said to be as low.
        double least = Double.POSITIVE_INFINITY;
        double lastingLeast = Double.POSITIVE_INFINITY;
        for (String each : plant.carrying(node)) {
            int place = units.place(each, at);
            double left = steadyVolts(each, at) - lasting.applyAsDouble(place);
            lastingLeast = Math.min(lastingLeast, left);
            least = Math.min(least, left - fall.applyAsDouble(place));
        }
        return new Limits(
                new Span(Math.max(0, percent(least, node, at)), percent(greatest, node, at)),
                new Span(Math.max(0, percent(lastingLeast, node, at)), percent(lastingGreatest, node, at)));
    }

    /** By phasors at the worst angles, see {@link AngleSearch}. */
    public double leastPercentByPhasors(String node, Terminals at) {
        return percent(angles().leastVolts(node, at, Double.NEGATIVE_INFINITY), node, at);
    }

    public double greatestPercentByPhasors(String node, Terminals at) {
        return percent(angles().greatestVolts(node, at, Double.POSITIVE_INFINITY), node, at);
    }

    /** Whether {@link #leastPercentByPhasors} is below a level; mostly known before that is. */
    public boolean isBelowByPhasors(String node, Terminals at, double percent) {
        double volts = volts(percent, node, at) + ROUNDING_PERCENT / 100 * units.nominalVolts(units.place(node, at));
        return plant.carrying(node).stream()
                        .anyMatch(each -> steadyVolts(each, at) - reach().volts(units.place(each, at)) < volts)
                && percent(angles().leastVolts(node, at, volts(percent, node, at)), node, at) < percent;
    }

    /** Whether {@link #greatestPercentByPhasors} is above a level. */
    public boolean isAboveByPhasors(String node, Terminals at, double percent) {
        double most = steadyVolts(node, at) + reach().volts(units.place(node, at));
        return percent(most, node, at) + ROUNDING_PERCENT > percent
                && percent(angles().greatestVolts(node, at, volts(percent, node, at)), node, at) > percent;
    }

    private Reach reach() {
        if (reach == null) {
            reach = first == null
                    ? Reach.of(units, steadyVolts, ranges(), inrushes, kinds)
                    : first.reach().later(units, inrushes, kinds);
        }
        return reach;
    }

    /** By phasors, each inrush at the power factor that its load states. */
    public double statedPercent(String node, Terminals at) {
        return percent(angles().statedVolts(node, at), node, at);
    }

    private AngleSearch angles() {
        if (angles == null) {
            angles = new AngleSearch(units, steady, steadyVolts.voltages(), inrushes, kinds);
        }
        return angles;
    }

    public double leastPercentByBound(String node, Terminals at) {
        double least = Double.POSITIVE_INFINITY;
        for (String carrying : plant.carrying(node)) {
            least = Math.min(least, ranges().leastVolts(carrying, at));
        }
        return percent(least, node, at);
    }

    public double greatestPercentByBound(String node, Terminals at) {
        return percent(ranges().greatestVolts(node, at), node, at);
    }

    public boolean isBelowByBound(String node, Terminals at, double percent) {
        return limitsByBound(node, at).most().leastPercent() - ROUNDING_PERCENT < percent
                && leastPercentByBound(node, at) < percent;
    }

    public boolean isAboveByBound(String node, Terminals at, double percent) {
        return limitsByBound(node, at).most().greatestPercent() + ROUNDING_PERCENT > percent
                && greatestPercentByBound(node, at) > percent;
    }

    private DipBound ranges() {
        if (bound == null) {
            bound = new DipBound(units, steadyVolts, known, together());
        }
        return bound;
    }

    private static Map<String, RadialPlant.Draw> draws(Map<String, LineValues> steady) {
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

    private double volts(double percent, String node, Terminals at) {
        return percent / 100 * units.nominalVolts(units.place(node, at));
    }

    private double percent(double volts, String node, Terminals at) {
        return 100 * volts / units.nominalVolts(units.place(node, at));
    }
}
