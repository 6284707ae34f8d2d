package evenrise.solver.engine.search;

import evenrise.solver.engine.move.DraftMove;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSnapshot;
import evenrise.solver.engine.state.Setting;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.optaplanner.core.api.score.director.ScoreDirector;
import org.optaplanner.core.impl.heuristic.move.AbstractMove;

/** Any number of loads to new places and outputs, and boards to new settings, in one go. */
final class Rearrangement extends AbstractMove<WorkingPlan> {
    private final List<Change> changes;
    private final int work;
    private final boolean isJudged;

    Rearrangement(int size) {
        this(size, 1, false);
    }

    /**
     * @param work how many moves it cost to find
     * @param isJudged whether it stays unless it breaks a rule: what it is made of has been judged already
     */
    Rearrangement(int size, int work, boolean isJudged) {
        changes = new ArrayList<>(size);
        this.work = work;
        this.isJudged = isJudged;
    }

    private record Change(
            LoadPlacement load,
            Place place,
            Output output,
            Setting time,
            BoardSetup board,
            Setting startDelay,
            Setting step) {}

    static Rearrangement of(DraftMove draft, WorkingPlan plan) {
        Rearrangement move =
                new Rearrangement(draft.loadCount() + draft.boardChanges().size());
        for (int i = 0; i < draft.loadCount(); i++) {
            move.load(plan.loads().get(draft.load(i)), draft.place(i), draft.output(i), draft.time(i));
        }
        for (DraftMove.BoardChange change : draft.boardChanges()) {
            move.board(plan.boards().get(change.board()), change.startDelay(), change.step());
        }
        return move;
    }

    /** Back to a plan that was met before. */
    static Rearrangement to(PlanSnapshot met, WorkingPlan plan) {
        Rearrangement move = new Rearrangement(met.loadCount() + met.boardCount(), 1, true);
        for (int load = 0; load < met.loadCount(); load++) {
            move.load(plan.loads().get(load), met.placeOf(load), met.outputOf(load), met.time(load));
        }
        for (int board = 0; board < met.boardCount(); board++) {
            move.board(plan.boards().get(board), met.startDelay(board), met.step(board));
        }
        return move;
    }

    int work() {
        return work;
    }

    boolean isJudged() {
        return isJudged;
    }

    Rearrangement load(LoadPlacement load, Place place, Output output, Setting time) {
        changes.add(new Change(load, place, output, time, null, null, null));
        return this;
    }

    Rearrangement board(BoardSetup board, Setting startDelay, Setting step) {
        changes.add(new Change(null, null, null, null, board, startDelay, step));
        return this;
    }

    /** Always: where nothing can be changed, trying nothing still uses the budget, and the search ends. */
    @Override
    public boolean isMoveDoable(ScoreDirector<WorkingPlan> scoreDirector) {
        return true;
    }

    @Override
    protected Rearrangement createUndoMove(ScoreDirector<WorkingPlan> scoreDirector) {
        Rearrangement undo = new Rearrangement(changes.size());
        for (Change change : changes) {
            if (change.load != null) {
                undo.load(change.load, change.load.getPlace(), change.load.getOutput(), change.load.getTime());
            } else {
                undo.board(change.board, change.board.getStartDelay(), change.board.getStep());
            }
        }
        return undo;
    }

    @Override
    protected void doMoveOnGenuineVariables(ScoreDirector<WorkingPlan> director) {
        for (Change change : changes) {
            if (change.load != null) {
                move(director, change);
            } else {
                set(director, change.board, change.startDelay, change.step);
            }
        }
    }

    /**
     * Tells of a load once, by one of its variables: the calculator asks which loads have changed and not in what, and no
     * variable follows from another. Each call looks up the variable's name, which was three per cent of the search's time.
     */
    private static void move(ScoreDirector<WorkingPlan> director, Change change) {
        LoadPlacement load = change.load;
        boolean stays =
                load.getPlace() == change.place && load.getOutput() == change.output && load.getTime() == change.time;
        if (!stays) {
            load.setPlace(change.place);
            load.setOutput(change.output);
            load.setTime(change.time);
            director.afterVariableChanged(load, "place");
        }
    }

    private static void set(ScoreDirector<WorkingPlan> director, BoardSetup board, Setting startDelay, Setting step) {
        if (board.getStartDelay() != startDelay) {
            director.beforeVariableChanged(board, "startDelay");
            board.setStartDelay(startDelay);
            director.afterVariableChanged(board, "startDelay");
        }
        if (board.getStep() != step) {
            director.beforeVariableChanged(board, "step");
            board.setStep(step);
            director.afterVariableChanged(board, "step");
        }
    }

    @Override
    public Rearrangement rebase(ScoreDirector<WorkingPlan> destination) {
        Rearrangement rebased = new Rearrangement(changes.size());
        for (Change change : changes) {
            if (change.load != null) {
                rebased.load(destination.lookUpWorkingObject(change.load), change.place, change.output, change.time);
            } else {
                rebased.board(destination.lookUpWorkingObject(change.board), change.startDelay, change.step);
            }
        }
        return rebased;
    }

    @Override
    public Collection<?> getPlanningEntities() {
        return changes.stream()
                .map(change -> change.load != null ? change.load : change.board)
                .toList();
    }

    @Override
    public Collection<?> getPlanningValues() {
        return List.of();
    }

    @Override
    public String toString() {
        return changes.toString();
    }
}
