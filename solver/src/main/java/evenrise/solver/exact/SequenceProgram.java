package evenrise.solver.exact;

import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import evenrise.model.project.Board;
import evenrise.model.project.Load;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Project;

/**
 * When loads come on, by which outputs of which boards, as an integer program without currents: every rule of order, of
 * boards and of groups, for the least sum of duration and boards by their weights. A relaxation of the contract, in which
 * any load may share any phase.
 */
final class SequenceProgram {
    private final CpModel model = new CpModel();
    private final Project project;
    private final ExactModelTimes times;
    private final ExactModelBoards boards;

    /**
     * @param mostSeconds plans that take longer are left out
     * @throws Unfit where the project does not fit the model, or there is no solver on this platform
     */
    SequenceProgram(Project project, double mostSeconds) {
        NativeSolver.load();
        this.project = project;
        ReachableTimes reachable = new ReachableTimes(project);
        ExactModelPlaces places = new ExactModelPlaces(model, project);
        times = new ExactModelTimes(model, project, reachable, ExactModelUnits.latestMicros(mostSeconds));
        ExactModelOrder.add(model, project, times);
        boards = new ExactModelBoards(model, project, times, reachable);
        ExactModelGroups.add(model, project, places, boards);
    }

    CpModel model() {
        return model;
    }

    /** One unit of what is made small, in ampere-equivalents: of duration and boards by their weights. */
    double minimize() {
        ObjectiveWeights weights = project.objective();
        IntVar duration = model.newIntVar(0, times.all().last(), "");
        LinearExprBuilder sum = LinearExpr.newBuilder();
        sum.addTerm(duration, ExactModelUnits.weight(weights.duration()));
        project.loads().stream().filter(Load::switched).forEach(load -> model.addLessOrEqual(times.on(load), duration));
        for (Board board : project.boards()) {
            sum.addTerm(
                    boards.idle(board).not(), ExactModelUnits.weight(weights.boards()) * ExactModelUnits.PER_SECOND);
        }
        model.minimize(sum.build());
        return 1.0 / (ExactModelUnits.PER_WEIGHT * ExactModelUnits.PER_SECOND);
    }
}
