package evenrise.solver.engine.search;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSnapshot;
import evenrise.solver.engine.state.PlanSums;
import evenrise.solver.engine.state.Setting;
import java.util.ArrayList;
import java.util.List;
import org.optaplanner.core.api.domain.solution.PlanningEntityCollectionProperty;
import org.optaplanner.core.api.domain.solution.PlanningScore;
import org.optaplanner.core.api.domain.solution.PlanningSolution;
import org.optaplanner.core.api.domain.solution.cloner.SolutionCloner;
import org.optaplanner.core.api.domain.valuerange.ValueRangeProvider;
import org.optaplanner.core.api.score.buildin.hardsoftlong.HardSoftLongScore;

/**
 * A plan while it is searched for. Score levels: how much hard rules are broken; the objective in milliampere-equivalents.
 */
@PlanningSolution(solutionCloner = WorkingPlan.Cloner.class)
public class WorkingPlan {
    private CompiledProject compiled;

    @PlanningEntityCollectionProperty
    private List<LoadPlacement> loads;

    @PlanningEntityCollectionProperty
    private List<BoardSetup> boards;

    @PlanningScore
    private HardSoftLongScore score;

    WorkingPlan() {}

    WorkingPlan(CompiledProject compiled, List<LoadPlacement> loads, List<BoardSetup> boards) {
        this.compiled = compiled;
        this.loads = loads;
        this.boards = boards;
    }

    static WorkingPlan of(CompiledProject compiled, PlanSnapshot plan) {
        List<LoadPlacement> loads = new ArrayList<>(plan.loadCount());
        for (int load = 0; load < plan.loadCount(); load++) {
            loads.add(new LoadPlacement(load, plan.placeOf(load), plan.outputOf(load), plan.time(load)));
        }
        List<BoardSetup> boards = new ArrayList<>(plan.boardCount());
        for (int board = 0; board < plan.boardCount(); board++) {
            boards.add(new BoardSetup(board, plan.startDelay(board), plan.step(board)));
        }
        return new WorkingPlan(compiled, loads, boards);
    }

    PlanSnapshot snapshot() {
        return new PlanSnapshot(
                loads.stream().map(LoadPlacement::getPlace).toArray(Place[]::new),
                loads.stream().map(LoadPlacement::getOutput).toArray(Output[]::new),
                boards.stream().map(BoardSetup::getStartDelay).toArray(Setting[]::new),
                boards.stream().map(BoardSetup::getStep).toArray(Setting[]::new),
                loads.stream().map(LoadPlacement::getTime).toArray(Setting[]::new));
    }

    PlanSums sums() {
        return PlanSums.of(compiled, snapshot());
    }

    CompiledProject compiled() {
        return compiled;
    }

    /** In the order of the project's loads. */
    List<LoadPlacement> loads() {
        return loads;
    }

    /** In the order of the project's boards. */
    List<BoardSetup> boards() {
        return boards;
    }

    HardSoftLongScore score() {
        return score;
    }

    void setScore(HardSoftLongScore score) {
        this.score = score;
    }

    @ValueRangeProvider(id = "places")
    List<Place> places() {
        return compiled.places;
    }

    @ValueRangeProvider(id = "outputs")
    List<Output> outputs() {
        return compiled.outputs;
    }

    @ValueRangeProvider(id = "settings")
    List<Setting> settings() {
        return compiled.settings;
    }

    WorkingPlan copy() {
        List<LoadPlacement> loadCopies = new ArrayList<>(loads.size());
        for (LoadPlacement load : loads) {
            loadCopies.add(new LoadPlacement(load.load(), load.getPlace(), load.getOutput(), load.getTime()));
        }
        List<BoardSetup> boardCopies = new ArrayList<>(boards.size());
        for (BoardSetup board : boards) {
            boardCopies.add(new BoardSetup(board.board(), board.getStartDelay(), board.getStep()));
        }
        WorkingPlan copy = new WorkingPlan(compiled, loadCopies, boardCopies);
        copy.score = score;
        return copy;
    }

    /** Copies entities and shares facts; each new best plan costs one copy, so it must be cheap. */
    public static class Cloner implements SolutionCloner<WorkingPlan> {
        @Override
        public WorkingPlan cloneSolution(WorkingPlan original) {
            return original.copy();
        }
    }
}
