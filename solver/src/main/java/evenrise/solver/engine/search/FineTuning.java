package evenrise.solver.engine.search;

import evenrise.solver.engine.fine.FineHeat;
import evenrise.solver.engine.fine.FineSearch;
import evenrise.solver.engine.move.DraftMove;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanSums;
import java.util.BitSet;
import java.util.SplittableRandom;
import org.optaplanner.core.impl.score.director.InnerScoreDirector;

/**
 * Small changes among the moves of an annealing: long runs of them, and a few after each change of boards, before that is
 * judged. Eight of them are counted as one move, which is about what they cost. All constants are found by experiment.
 */
final class FineTuning {
    private static final int OF_ONE_MOVE = 8;
    private static final int FEWEST_IN_RUN = 2_000;
    private static final int IN_RUN_PER_LOAD = 4;
    /** Moves to one run, for each thousand changes of it. */
    private static final int MOVES_PER_THOUSAND = 30;

    private static final int TO_SETTLE = 300;

    private final PlanScoreCalculator calculator;
    private final InnerScoreDirector<WorkingPlan, ?> director;
    private final SplittableRandom random;
    private CompiledProject compiled;
    private boolean suits;
    private FineSearch search;
    private int inRun;

    FineTuning(PlanScoreCalculator calculator, InnerScoreDirector<WorkingPlan, ?> director, SplittableRandom random) {
        this.calculator = calculator;
        this.director = director;
        this.random = random;
    }

    /** Whether small changes can be made: in plain projects of more than 50 loads, while no rule is broken. */
    boolean isOn() {
        PlanSums sums = calculator.sums();
        if (compiled != sums.compiled) {
            compiled = sums.compiled;
            suits = !compiled.isSmall() && FineSearch.suits(compiled);
            search = suits ? new FineSearch(compiled) : null;
            inRun = Math.max(FEWEST_IN_RUN, IN_RUN_PER_LOAD * compiled.loadCount());
        }
        return suits && sums.hardCharge() == 0 && calculator.heat().temperature() > 0;
    }

    /** Whether it is time for a run, by chance. */
    boolean isDue() {
        return isOn() && random.nextInt(MOVES_PER_THOUSAND * inRun / 1000) == 0;
    }

    /** What a run of small changes comes to, each of them judged. */
    Rearrangement run(WorkingPlan plan) {
        search.take(calculator.sums());
        search.run(inRun, calculator.heat(), random);
        return changes(plan, inRun / OF_ONE_MOVE, true);
    }

    /** A change and what small ones make of it on the boards and in the panels that it touches; all to be judged as one. */
    Rearrangement settle(DraftMove draft, WorkingPlan plan) {
        PlanSums sums = calculator.sums();
        FineHeat heat = calculator.heat();
        BitSet boards = new BitSet();
        BitSet panels = new BitSet();
        DraftMove inverse = draft.inverse();
        mark(draft, sums, boards, panels);
        draft.apply();
        mark(draft, sums, boards, panels);
        boolean isKept = sums.hardCharge() == 0;
        if (isKept) {
            search.take(sums);
            search.only(boards, panels);
            search.run(TO_SETTLE, heat, random);
        }
        inverse.apply();
        return isKept ? changes(plan, 1 + TO_SETTLE / OF_ONE_MOVE, false) : Rearrangement.of(draft, plan);
    }

    private static void mark(DraftMove draft, PlanSums sums, BitSet boards, BitSet panels) {
        for (int i = 0; i < draft.loadCount(); i++) {
            int load = draft.load(i);
            if (sums.outputOf(load) != null) {
                boards.set(sums.outputOf(load).board());
            }
            panels.set(sums.placeOf(load).panel());
        }
        for (int board : draft.boards()) {
            boards.set(board);
        }
    }

    private Rearrangement changes(WorkingPlan plan, int work, boolean isJudged) {
        for (int i = 1; i < work; i++) {
            director.incrementCalculationCount();
        }
        PlanSums sums = calculator.sums();
        Rearrangement move = new Rearrangement(64, work, isJudged);
        for (int load = 0; load < compiled.loadCount(); load++) {
            if (search.placeOf(load) != sums.placeOf(load) || search.outputOf(load) != sums.outputOf(load)) {
                move.load(plan.loads().get(load), search.placeOf(load), search.outputOf(load), sums.timeOf(load));
            }
        }
        for (int board = 0; board < compiled.boardCount; board++) {
            if (search.startDelay(board) != sums.clock().startDelay(board)
                    || search.step(board) != sums.clock().step(board)) {
                move.board(plan.boards().get(board), search.startDelay(board), search.step(board));
            }
        }
        return move;
    }
}
