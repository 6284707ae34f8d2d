package evenrise.solver.engine.search;

import evenrise.solver.engine.fine.FineHeat;
import evenrise.solver.engine.state.PlanSnapshot;
import evenrise.solver.engine.state.PlanSums;
import org.optaplanner.core.api.score.buildin.hardsoftlong.HardSoftLongScore;
import org.optaplanner.core.api.score.calculator.IncrementalScoreCalculator;

/** Keeps a {@link PlanSums} in step with the working plan and reads the score off it. */
public final class PlanScoreCalculator implements IncrementalScoreCalculator<WorkingPlan, HardSoftLongScore> {
    private PlanSnapshot askedFor;
    private PlanSums sums;
    private Energy measure;
    private Steering steering;
    private double energy;
    private long hardCharge;
    private LoadPlacement[] changedLoads;
    private int changedLoadCount;
    private BoardSetup[] changedBoards;
    private int changedBoardCount;

    @Override
    public void resetWorkingSolution(WorkingPlan plan) {
        sums = plan.sums();
        measure = measure == null ? new Energy(plan.compiled()) : measure;
        changedLoads = new LoadPlacement[256];
        changedBoards = new BoardSetup[64];
        changedLoadCount = 0;
        changedBoardCount = 0;
        if (steering != null) {
            steering.take(sums);
        }
    }

    /** From now on tells who leads the search of every load and board that may have changed. */
    void lead(Steering leading) {
        steering = leading;
        steering.take(sums());
    }

    /** The sums of the working plan as it is now. */
    PlanSums sums() {
        for (int i = 0; i < changedLoadCount; i++) {
            LoadPlacement load = changedLoads[i];
            sums.seat(load.load(), load.getPlace(), load.getOutput(), load.getTime());
        }
        for (int i = 0; i < changedBoardCount; i++) {
            BoardSetup board = changedBoards[i];
            sums.set(board.board(), board.getStartDelay(), board.getStep());
        }
        sums.settle();
        if (steering != null) {
            tell();
        }
        changedLoadCount = 0;
        changedBoardCount = 0;
        return sums;
    }

    private void tell() {
        for (int i = 0; i < changedLoadCount; i++) {
            steering.loadChanged(changedLoads[i].load());
        }
        for (int i = 0; i < changedBoardCount; i++) {
            steering.boardChanged(changedBoards[i].board());
        }
    }

    @Override
    public HardSoftLongScore calculateScore() {
        HardSoftLongScore score = score(sums());
        energy = measure.of(sums);
        hardCharge = -score.hardScore();
        return score;
    }

    /** Measures energies as a part of an annealing asks for, from 0 to 1; says whether they are now others than before. */
    boolean enterStage(double progress) {
        return measure.enterStage(progress);
    }

    /** The next move is to lead to this plan; none is asked for where it is null. */
    void askFor(PlanSnapshot plan) {
        askedFor = plan;
    }

    /** The plan that the next move is to lead to, once; null where any move will do. */
    PlanSnapshot takeAsked() {
        PlanSnapshot asked = askedFor;
        askedFor = null;
        return asked;
    }

    /** How hot the annealing is, and has been at first. */
    void temperature(double now, double hottest) {
        measure.temperature(now, hottest);
    }

    /** What small changes are judged by; of temperature 0 where nothing is annealed. */
    FineHeat heat() {
        return measure.heat();
    }

    /** How much the plan whose score was calculated last breaks hard rules. */
    long hardCharge() {
        return hardCharge;
    }

    /** The energy of the plan whose score was calculated last. */
    double energy() {
        return energy;
    }

    static HardSoftLongScore score(PlanSums sums) {
        return HardSoftLongScore.of(-sums.hardCharge(), -sums.objectiveMilliAmps());
    }

    @Override
    public void afterVariableChanged(Object entity, String variableName) {
        if (entity instanceof LoadPlacement load) {
            if (changedLoadCount > 0 && changedLoads[changedLoadCount - 1] == load) {
                return;
            }
            if (changedLoadCount == changedLoads.length) {
                changedLoads = java.util.Arrays.copyOf(changedLoads, 2 * changedLoadCount);
            }
            changedLoads[changedLoadCount++] = load;
        } else if (entity instanceof BoardSetup board) {
            if (changedBoardCount == changedBoards.length) {
                changedBoards = java.util.Arrays.copyOf(changedBoards, 2 * changedBoardCount);
            }
            changedBoards[changedBoardCount++] = board;
        }
    }

    @Override
    public void beforeVariableChanged(Object entity, String variableName) {}

    @Override
    public void beforeEntityAdded(Object entity) {}

    @Override
    public void afterEntityAdded(Object entity) {}

    @Override
    public void beforeEntityRemoved(Object entity) {}

    @Override
    public void afterEntityRemoved(Object entity) {}
}
