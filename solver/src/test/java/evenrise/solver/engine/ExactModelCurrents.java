package evenrise.solver.engine;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import evenrise.model.electrical.NeutralCurrent;
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
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;

/**
 * Currents in the exact model. Running currents are exact. Envelopes are rounded down to a unit each, so a peak is never
 * overstated and understated by less than a unit a load.
 */
final class ExactModelCurrents {
    private static final long LARGEST = 1_000_000 * ExactModelUnits.PER_AMP;

    /** Where and when a load comes on; the time is {@link #ALWAYS} for an unswitched one. */
    private record Moment(ExactModelPlaces.Spot spot, long millis) {}

    private static final long ALWAYS = Long.MIN_VALUE;

    private final CpModel model;
    private final Project project;
    private final ExactModelPlaces places;
    private final List<Phase> phases;
    private final Map<Load, Map<Moment, BoolVar>> moments = new LinkedHashMap<>();
    private final TreeSet<Long> instants = new TreeSet<>();
    private final IntVar peak;
    private final Map<String, IntVar> deviations = new LinkedHashMap<>();

    ExactModelCurrents(CpModel model, Project project, ExactModelPlaces places, ExactModelTimes times) {
        this.model = model;
        this.project = project;
        this.places = places;
        this.phases = project.supply().system().phases();
        project.loads().forEach(load -> moments.put(load, moments(load, times)));
        peak = model.newIntVar(0, LARGEST, "peak");
        for (NodeLimits node : NodeLimits.of(project)) {
            rating(node);
            deviation(node.node());
            if (node.node().equals(NodeFigures.SUPPLY)) {
                peakWithin(node.node(), peak);
            }
            node.inrushLimitAmps()
                    .ifPresent(limit ->
                            peakWithin(node.node(), model.newConstant(ExactModelUnits.amps(limit + Tolerances.AMPS))));
        }
    }

    IntVar peak() {
        return peak;
    }

    /** Deviation of the supply or of a panel, times the number of phases, which makes the mean a whole number. */
    IntVar deviationTimesPhases(String node) {
        return deviations.get(node);
    }

    /** Products of "is in this spot" and "comes on then": a table whose margins are the two. */
    private Map<Moment, BoolVar> moments(Load load, ExactModelTimes times) {
        Map<Moment, BoolVar> own = new LinkedHashMap<>();
        Map<ExactModelPlaces.Spot, BoolVar> spots = places.spots(load);
        if (!load.switched()) {
            spots.forEach((spot, literal) -> own.put(new Moment(spot, ALWAYS), literal));
            return own;
        }
        instants.addAll(times.instants(load).keySet());
        Map<Long, List<BoolVar>> byTime = new LinkedHashMap<>();
        spots.forEach((spot, there) -> {
            List<BoolVar> row = new ArrayList<>();
            times.instants(load).keySet().forEach(time -> {
                BoolVar cell = model.newBoolVar(load.id() + " in " + spot + " at " + time);
                own.put(new Moment(spot, time), cell);
                row.add(cell);
                byTime.computeIfAbsent(time, any -> new ArrayList<>()).add(cell);
            });
            model.addEquality(there, ExactModelUnits.sum(row));
        });
        times.instants(load)
                .forEach((time, then) ->
                        model.addEquality(then, ExactModelUnits.sum(byTime.getOrDefault(time, List.of()))));
        return own;
    }

    private static boolean feeds(String node, ExactModelPlaces.Spot spot) {
        return node.equals(NodeFigures.SUPPLY) || node.equals(spot.panel());
    }

    /**
     * The sum of envelopes on every phase at every instant that can occur. In a plan only some of them see a switch-on;
     * at any other the sum is at most what it was at the latest switch-on before, since an envelope only falls once it
     * has started, or what is always on. So nothing is asked that the peak does not ask anyway.
     */
    private void peakWithin(String node, IntVar limit) {
        for (Phase phase : phases) {
            model.addLessOrEqual(amps(node, phase, ALWAYS), limit);
            instants.forEach(instant -> model.addLessOrEqual(amps(node, phase, instant), limit));
        }
    }

    private LinearExpr amps(String node, Phase phase, long instant) {
        LinearExprBuilder sum = LinearExpr.newBuilder();
        moments.forEach((load, own) -> own.forEach((moment, literal) -> {
            boolean drawing = moment.millis() <= instant;
            if (drawing && feeds(node, moment.spot()) && moment.spot().phases().contains(phase)) {
                sum.addTerm(literal, ExactModelUnits.amps(envelopeAmps(load, moment.millis(), instant)));
            }
        }));
        return sum.build();
    }

    /** The contract's formula, from the nominal times of the load and of the instant: both are early by g. */
    private double envelopeAmps(Load load, long on, long instant) {
        double base = Math.sqrt(2) * load.idleAmps();
        if (on == ALWAYS) {
            return base;
        }
        double since = (instant - on) / (double) ExactModelUnits.PER_SECOND;
        double decaying = Math.max(0, since - 2 * project.timingToleranceSeconds());
        double excess = Math.max(0, load.inrushPeakAmps() - base);
        return base + excess * Math.pow(2, -decaying / (load.inrushHalfMillis() / 1000));
    }

    private void rating(NodeLimits node) {
        double allowed = node.ratedAmps() * project.supply().continuousFraction() + Tolerances.AMPS;
        for (Phase phase : phases) {
            model.addLessOrEqual(
                    addRunning(LinearExpr.newBuilder(), node.node(), phase, 1).build(), ExactModelUnits.amps(allowed));
        }
    }

    private LinearExprBuilder addRunning(LinearExprBuilder sum, String node, Phase phase, long times) {
        for (Load load : project.loads()) {
            long amps = ExactModelUnits.exactly(load.runningAmps(), ExactModelUnits.PER_AMP);
            places.spots(load).forEach((spot, literal) -> {
                if (feeds(node, spot) && spot.phases().contains(phase)) {
                    sum.addTerm(literal, times * amps);
                }
            });
        }
        return sum;
    }

    private void deviation(String node) {
        IntVar deviation = model.newIntVar(0, LARGEST, "deviation of " + node);
        deviations.put(node, deviation);
        for (Phase phase : phases) {
            for (int sign : new int[] {1, -1}) {
                LinearExprBuilder distance =
                        addRunning(LinearExpr.newBuilder(), node, phase, (long) sign * phases.size());
                phases.forEach(each -> addRunning(distance, node, each, -sign));
                model.addLessOrEqual(distance.build(), deviation);
            }
        }
    }

    /**
     * Cuts off a neutral current: the length of a sum of vectors stays within the limit only if its component in any
     * direction does. The cut is the component in the direction of {@code real}, {@code imaginary}, {@code third}.
     */
    void cutNeutral(NodeLimits node, NeutralCurrent.Share found) {
        double length = Math.hypot(Math.hypot(found.realAmps(), found.imaginaryAmps()), found.thirdAmps());
        ToDoubleFunction<NeutralCurrent.Share> component = share -> (share.realAmps() * found.realAmps()
                        + share.imaginaryAmps() * found.imaginaryAmps()
                        + share.thirdAmps() * found.thirdAmps())
                / length;
        LinearExprBuilder sum = LinearExpr.newBuilder();
        for (Load load : project.loads()) {
            if (load.poles() == 1) {
                places.spots(load).forEach((spot, literal) -> {
                    if (feeds(node.node(), spot)) {
                        double amps = component.applyAsDouble(
                                share(load, spot.phases().get(0)));
                        sum.addTerm(literal, ExactModelUnits.amps(amps));
                    }
                });
            }
        }
        model.addLessOrEqual(sum.build(), ExactModelUnits.amps(node.neutralAmps() + Tolerances.AMPS));
    }

    /** What a one-pole load on {@code phase} adds to a neutral. */
    NeutralCurrent.Share share(Load load, Phase phase) {
        return NeutralCurrent.share(
                project.supply().system(), phase, load.runningAmps(), load.powerFactor(), load.thirdHarmonic());
    }

    /** Every literal that says where and when a load comes on; all that currents depend on. */
    List<BoolVar> moments() {
        return moments.values().stream().flatMap(own -> own.values().stream()).toList();
    }
}
