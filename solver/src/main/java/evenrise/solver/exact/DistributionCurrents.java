package evenrise.solver.exact;

import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import evenrise.model.project.Load;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.project.Spare;
import evenrise.model.project.TransformerConnection;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.SceneCurrents.InScene;
import evenrise.solver.exact.DistributionSeating.Choice;
import java.util.ArrayList;
import java.util.List;

/** Running currents at the points of a distribution: ratings, and how far phases deviate. */
final class DistributionCurrents {
    private static final long LARGEST = ExactModelCurrents.LARGEST;

    private final CpModel model;
    private final Project project;
    private final List<Point> points;
    private final List<InScene> all;
    private final List<Load> loads;
    private final DistributionSeating seating;
    private final LinearExprBuilder deviations = LinearExpr.newBuilder();

    DistributionCurrents(
            CpModel model,
            Project project,
            List<Point> points,
            List<InScene> scenes,
            List<Load> loads,
            DistributionSeating seating) {
        this.model = model;
        this.project = project;
        this.points = points;
        this.all = scenes;
        this.loads = loads;
        this.seating = seating;
    }

    /** Deviations of all points by their weights, in the units of the objective. */
    LinearExpr deviations() {
        return deviations.build();
    }

    /** Whether a node's running currents are sums of its loads': a delta takes off what opposes. */
    boolean carriesPlainSums(Point node) {
        return points.stream().noneMatch(point -> isDelta(point) && isBelow(point, node.index()));
    }

    private static boolean isDelta(Point point) {
        return point.node()
                .flatMap(each -> each.transformer())
                .filter(each -> each.connection() == TransformerConnection.DELTA_WYE)
                .isPresent();
    }

    private boolean isBelow(Point point, int node) {
        int at = point.parent();
        while (at >= 0 && at != node) {
            at = points.get(at).parent();
        }
        return at == node;
    }

    /** Ratings in every scene, and the mean of the deviations. */
    void run(Point point, NodeLimits limit) {
        int phases = limit.phases().size();
        long weight = weightOf(point);
        for (InScene scene : all) {
            List<LinearExpr> sums = new ArrayList<>();
            LinearExprBuilder total = LinearExpr.newBuilder();
            for (Phase phase : limit.phases()) {
                LinearExprBuilder sum = LinearExpr.newBuilder();
                for (Load load : loads) {
                    double amps = scene.runningAmps().get(load.id());
                    for (Choice choice : seating.of(load)) {
                        double part = choice.seat().part(point.index(), phase);
                        if (part > 0 && amps > 0) {
                            sum.addTerm(choice.taken(), ExactModelUnits.amps(part * amps));
                        }
                    }
                }
                model.addLessOrEqual(sum.build(), ExactModelUnits.amps(allowedAmps(point, limit)) + loads.size());
                sums.add(sum.build());
                total.add(sum.build());
            }
            long share = (long) Math.floor(weight * scene.share());
            if (share > 0 && phases > 1) {
                IntVar timesPhases = model.newIntVar(0, phases * LARGEST, "");
                // Each sum is rounded down by less than a unit a load, so a difference by no more than that.
                for (LinearExpr sum : sums) {
                    LinearExprBuilder over = LinearExpr.newBuilder();
                    over.addTerm(sum, phases).addTerm(total.build(), -1);
                    model.addGreaterOrEqual(timesPhases, over.build());
                    LinearExprBuilder under = LinearExpr.newBuilder();
                    under.addTerm(sum, -phases).addTerm(total.build(), 1);
                    model.addGreaterOrEqual(timesPhases, under.build());
                }
                long slack = (long) phases * 2 * loads.size();
                IntVar proven = model.newIntVar(0, phases * LARGEST, "");
                LinearExprBuilder less = LinearExpr.newBuilder();
                less.add(timesPhases).add(-slack);
                model.addGreaterOrEqual(proven, less.build());
                deviations.addTerm(proven, DistributionLadder.COMMON / phases * share);
            }
        }
    }

    /** In a panel, less what is to be left free. */
    private double allowedAmps(Point point, NodeLimits limit) {
        double spare = point.panel()
                .flatMap(project::spareIn)
                .map(Spare::runningPercent)
                .orElse(0.0);
        return limit.continuousAmps() * (1 - spare / 100);
    }

    private long weightOf(Point point) {
        ObjectiveWeights weights = project.objective();
        boolean isSource = point.index() == 0 || point.isFurtherSource();
        return ExactModelUnits.weight(
                point.panel().isPresent()
                        ? weights.panelImbalance()
                        : isSource ? weights.supplyImbalance() : weights.nodeImbalance());
    }
}
