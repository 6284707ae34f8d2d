package evenrise.solver.exact;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearArgument;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.Tolerances;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Inrush in the exact model: the sum of envelopes on every phase at every instant that can occur. In a plan only some of
 * them see a switch-on; at any other the sum is at most what it was at the latest switch-on before, since an envelope only
 * falls once it has started, or what is always on. So nothing is asked that the peak does not ask anyway.
 *
 * <p>Base and excess of each load are rounded down to a unit, so a peak is never overstated and understated by less than
 * two units a load. What is on already is carried from instant to instant, so that only what is left of an excess, which
 * soon is nothing, has a term at many instants.
 */
final class ExactModelInrush {
    private final CpModel model;
    private final Project project;
    private final ExactModelPlaces places;
    private final ExactModelTimes times;
    private final List<Phase> phases;
    private final IntVar peak;
    private final long grain;
    private final Map<Load, Map<List<Phase>, Map<Long, BoolVar>>> bySupply = new LinkedHashMap<>();

    ExactModelInrush(CpModel model, Project project, ExactModelPlaces places, ExactModelTimes times) {
        this.model = model;
        this.project = project;
        this.places = places;
        this.times = times;
        this.phases = project.supply().system().phases();
        this.grain = grain();
        this.peak = model.newIntVar(0, ExactModelCurrents.LARGEST / grain, "");
        project.loads().stream().filter(Load::switched).forEach(load -> bySupply.put(load, onPhases(load)));
        for (NodeLimits node : NodeLimits.of(project)) {
            boolean isSupply = node.node().equals(NodeFigures.SUPPLY);
            if (isSupply) {
                within(node.node(), bySupply, peak);
            }
            node.inrushLimitAmps().ifPresent(limit -> {
                long units = ExactModelUnits.amps(limit + Tolerances.AMPS) / grain;
                if (isSupply) {
                    model.addLessOrEqual(peak, units);
                } else {
                    within(node.node(), inPanel(node.node()), LinearExpr.constant(units));
                }
            });
        }
    }

    /** The peak, in grains. */
    IntVar peak() {
        return peak;
    }

    /**
     * Units of current in a grain, of which every current here is a multiple, and so every peak: mostly one, but where
     * figures are round, a bound between two multiples is as good as the higher.
     */
    long unitsPerGrain() {
        return grain;
    }

    private long grain() {
        long common = 0;
        for (Load load : project.loads()) {
            common = divisor(common, units(load.baseAmps()));
            for (long on : times.instants(load).keySet()) {
                for (long instant : times.all().tailSet(on, true)) {
                    long units = excessUnits(load, instant - on);
                    common = divisor(common, units);
                    if (units == 0 || common == 1) {
                        break;
                    }
                }
            }
        }
        return Math.max(1, common);
    }

    private static long divisor(long one, long other) {
        return other == 0 ? one : divisor(other, one % other);
    }

    /** Literals that say on which phases and when a switched load comes on. */
    Map<List<Phase>, Map<Long, BoolVar>> moments(Load load) {
        return bySupply.get(load);
    }

    /** Products of "on these phases" and "comes on then": a table whose margins are the two. */
    private Map<List<Phase>, Map<Long, BoolVar>> onPhases(Load load) {
        Map<List<Phase>, List<BoolVar>> sets = new LinkedHashMap<>();
        places.spots(load)
                .forEach((spot, literal) -> sets.computeIfAbsent(spot.phases(), any -> new ArrayList<>())
                        .add(literal));
        Map<List<Phase>, Map<Long, BoolVar>> own = new LinkedHashMap<>();
        if (sets.size() == 1) {
            own.put(sets.keySet().iterator().next(), times.instants(load));
            return own;
        }
        Map<Long, List<BoolVar>> byTime = new TreeMap<>();
        sets.forEach((set, there) -> {
            Map<Long, BoolVar> row = new TreeMap<>();
            times.instants(load).keySet().forEach(time -> {
                BoolVar cell = model.newBoolVar("");
                row.put(time, cell);
                byTime.computeIfAbsent(time, any -> new ArrayList<>()).add(cell);
            });
            own.put(set, row);
            model.addEquality(ExactModelUnits.sum(there), ExactModelUnits.sum(row.values()));
        });
        times.instants(load).forEach((time, then) -> model.addEquality(then, ExactModelUnits.sum(byTime.get(time))));
        return own;
    }

    /** The same for one panel; a load that sits elsewhere comes on nowhere here. */
    private Map<Load, Map<List<Phase>, Map<Long, BoolVar>>> inPanel(String panel) {
        Map<Load, Map<List<Phase>, Map<Long, BoolVar>>> all = new LinkedHashMap<>();
        bySupply.forEach((load, sets) -> sets.forEach((set, row) -> {
            BoolVar there = places.spots(load).get(new ExactModelPlaces.Spot(panel, set));
            if (there != null) {
                Map<Long, BoolVar> cells = new TreeMap<>();
                row.forEach((time, anywhere) -> {
                    BoolVar cell = model.newBoolVar("");
                    model.addImplication(cell, anywhere);
                    cells.put(time, cell);
                });
                model.addEquality(ExactModelUnits.sum(cells.values()), there);
                all.computeIfAbsent(load, any -> new LinkedHashMap<>()).put(set, cells);
            }
        }));
        return all;
    }

    private void within(
            String node, Map<Load, Map<List<Phase>, Map<Long, BoolVar>>> switchedLoads, LinearArgument limit) {
        for (Phase phase : phases) {
            Map<Long, LinearExprBuilder> starting = new TreeMap<>();
            Map<Long, LinearExprBuilder> excess = new TreeMap<>();
            for (long instant : times.all()) {
                starting.put(instant, LinearExpr.newBuilder());
                excess.put(instant, LinearExpr.newBuilder());
            }
            switchedLoads.forEach((load, sets) -> sets.forEach((set, row) -> {
                if (set.contains(phase)) {
                    row.forEach((time, literal) -> {
                        starting.get(time).addTerm(literal, baseUnits(load));
                        addExcess(load, time, literal, excess);
                    });
                }
            }));
            LinearArgument carried = alwaysOn(node, phase);
            model.addLessOrEqual(carried, limit);
            for (long instant : times.all()) {
                IntVar on = model.newIntVar(0, ExactModelCurrents.LARGEST / grain, "");
                model.addEquality(on, starting.get(instant).add(carried));
                model.addLessOrEqual(excess.get(instant).add(on), limit);
                carried = on;
            }
        }
    }

    private LinearArgument alwaysOn(String node, Phase phase) {
        LinearExprBuilder sum = LinearExpr.newBuilder();
        for (Load load : project.loads()) {
            if (!load.switched()) {
                places.spots(load).forEach((spot, literal) -> {
                    if (ExactModelCurrents.feeds(node, spot) && spot.phases().contains(phase)) {
                        sum.addTerm(literal, baseUnits(load));
                    }
                });
            }
        }
        return sum.build();
    }

    private long baseUnits(Load load) {
        return units(load.baseAmps()) / grain;
    }

    private static long units(double amps) {
        return ExactModelUnits.amps(amps);
    }

    private void addExcess(Load load, long on, BoolVar literal, Map<Long, LinearExprBuilder> sums) {
        for (long instant : times.all().tailSet(on, true)) {
            long units = excessUnits(load, instant - on);
            if (units == 0) {
                return;
            }
            sums.get(instant).addTerm(literal, units / grain);
        }
    }

    /** The contract's formula, from the nominal times of the load and of the instant: both are early by g. */
    private long excessUnits(Load load, long sinceMicros) {
        double excess = load.excessAmps();
        double since = sinceMicros / (double) ExactModelUnits.PER_SECOND;
        double decaying = Math.max(0, since - 2 * project.timingToleranceSeconds());
        return units(excess * Math.pow(2, -decaying / (load.inrushHalfMillis() / 1000)));
    }
}
