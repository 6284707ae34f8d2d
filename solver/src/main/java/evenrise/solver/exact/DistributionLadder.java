package evenrise.solver.exact;

import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import evenrise.model.project.Load;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Project;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.ProjectIndex;
import evenrise.model.rules.SceneCurrents;
import evenrise.solver.bounds.Seats;
import evenrise.solver.bounds.SourceShares;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What the sources of a distribution must bear in any order of switching, as an integer program without time: loads choose
 * panels and phases, and at every source, on every phase, the last to come on of the loads of a system and role whose excess
 * is at least some threshold brings that, and finds the bases of the others there, those of earlier roles, and what other
 * systems draw in use. A relaxation of the contract: slots, boards and times are left out. docs/bounds.md has the argument.
 */
final class DistributionLadder {
    /** A multiple of one, two and three phases: deviations times this are whole numbers. */
    static final long COMMON = 6;

    private final CpModel model = new CpModel();
    private final Project project;
    private final List<Load> loads;
    private final DistributionSeating seating;
    private final DistributionBoards boards;
    private final DistributionCurrents currents;

    /** Of the supply and of each source, by its place among the points. */
    private final Map<Integer, IntVar> peaks = new LinkedHashMap<>();

    /**
     * @param tellsRolesApart whether no load can come on a little before one of an earlier role and still be forgiven
     * @throws Unfit where a load fits nowhere, or there is no solver on this platform
     */
    DistributionLadder(Project project, boolean tellsRolesApart) {
        NativeSolver.load();
        this.project = project;
        ProjectIndex index = new ProjectIndex(project);
        Seats seats = new Seats(project);
        SceneCurrents scenes = SceneCurrents.of(index);
        List<Point> points = seats.distribution().points();
        List<NodeLimits> limits = NodeLimits.of(project);
        loads = project.loads().stream()
                .map(each -> index.load(each.id()).orElseThrow())
                .toList();
        seating = new DistributionSeating(model, index, seats, loads);
        boards = new DistributionBoards(model, index, loads);
        seating.reach(boards);
        DistributionPeaks bearing = new DistributionPeaks(model, project, scenes, tellsRolesApart, loads, seating);
        currents = new DistributionCurrents(model, project, points, scenes.scenes(), loads, seating);
        for (Point point : points) {
            NodeLimits limit = limits.get(point.index());
            boolean isSource = point.index() == 0 || point.isFurtherSource();
            if (isSource || limit.inrushLimitAmps().isPresent()) {
                IntVar peak = bearing.bear(point, limit.inrushLimitAmps());
                if (isSource) {
                    peaks.put(point.index(), peak);
                }
            }
            if (currents.carriesPlainSums(point)) {
                currents.run(point, limit);
            }
        }
        DistributionShares least = new DistributionShares(model, loads, seating);
        for (SourceShares shares : SourceShares.of(project)) {
            IntVar peak = peaks.get(shares.source());
            least.spread(shares, points.get(shares.source()), peak);
            least.rungs(shares, peak);
        }
    }

    CpModel model() {
        return model;
    }

    /**
     * Makes peaks, deviations, boards and racks small by their weights; gives one unit of that in ampere-equivalents.
     *
     * @param fewestBoards that every plan uses at least
     */
    double minimize(int fewestBoards) {
        ObjectiveWeights weights = project.objective();
        LinearExprBuilder sum = LinearExpr.newBuilder();
        peaks.values().forEach(peak -> sum.addTerm(peak, COMMON * ExactModelUnits.weight(weights.peakInrush())));
        boards.cost(sum, weights, fewestBoards, ExactModelUnits.PER_AMP * COMMON);
        sum.add(currents.deviations());
        long perPanel = ExactModelUnits.weight(weights.rackPanels());
        if (perPanel > 0) {
            DistributionRacks.cost(model, project, loads, seating, sum, perPanel * ExactModelUnits.PER_AMP * COMMON);
        }
        model.minimize(sum.build());
        return 1.0 / (ExactModelUnits.PER_AMP * ExactModelUnits.PER_WEIGHT * COMMON);
    }
}
