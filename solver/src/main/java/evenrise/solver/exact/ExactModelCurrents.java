package evenrise.solver.exact;

import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import evenrise.model.electrical.Lag;
import evenrise.model.electrical.NeutralCurrent;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.Tolerances;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/** Running and neutral currents in the exact model. Running currents are exact or the project does not fit. */
final class ExactModelCurrents {
    static final long LARGEST = 1_000_000 * ExactModelUnits.PER_AMP;

    private final CpModel model;
    private final Project project;
    private final ExactModelPlaces places;
    private final List<Phase> phases;
    private final Map<String, Deviation> deviations = new LinkedHashMap<>();
    private final int commonPhases;

    /** Of one node, times the number of its phases, which makes the mean a whole number. */
    private record Deviation(IntVar timesPhases, int phases) {}

    ExactModelCurrents(CpModel model, Project project, ExactModelPlaces places) {
        this.model = model;
        this.project = project;
        this.places = places;
        this.phases = project.supply().system().phases();
        List<NodeLimits> nodes = NodeLimits.of(project);
        this.commonPhases =
                nodes.stream().mapToInt(node -> node.phases().size()).reduce(1, ExactModelCurrents::commonMultiple);
        for (NodeLimits node : nodes) {
            rating(node);
            deviation(node);
        }
    }

    /** A multiple of every node's number of phases: deviations times this are whole numbers. */
    int commonPhases() {
        return commonPhases;
    }

    /** Adds a node's deviation times a weight and {@link #commonPhases}. */
    void addDeviation(LinearExprBuilder sum, String node, long weight) {
        Deviation deviation = deviations.get(node);
        sum.addTerm(deviation.timesPhases(), weight * (commonPhases / deviation.phases()));
    }

    private static int commonMultiple(int one, int other) {
        int multiple = one;
        while (multiple % other != 0) {
            multiple += one;
        }
        return multiple;
    }

    static boolean feeds(String node, ExactModelPlaces.Spot spot) {
        return node.equals(NodeFigures.SUPPLY) || node.equals(spot.panel());
    }

    private void rating(NodeLimits node) {
        double allowed = node.continuousAmps() + Tolerances.AMPS;
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

    private void deviation(NodeLimits node) {
        IntVar deviation = model.newIntVar(0, LARGEST, "");
        int count = node.phases().size();
        deviations.put(node.node(), new Deviation(deviation, count));
        List<IntVar> sums = node.phases().stream()
                .map(phase -> {
                    IntVar sum = model.newIntVar(0, LARGEST, "");
                    model.addEquality(addRunning(LinearExpr.newBuilder(), node.node(), phase, 1), sum);
                    return sum;
                })
                .toList();
        for (IntVar one : sums) {
            for (int sign : new int[] {1, -1}) {
                LinearExprBuilder distance = LinearExpr.newBuilder().addTerm(one, (long) sign * count);
                sums.forEach(each -> distance.addTerm(each, -sign));
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
                project.supply().system(), phase, load.runningAmps(), Lag.of(load), load.harmonicRatio());
    }
}
