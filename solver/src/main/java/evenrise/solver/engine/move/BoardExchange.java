package evenrise.solver.engine.move;

import evenrise.solver.engine.state.BoardClock;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.PlanSums;
import java.util.SplittableRandom;

/** Two boards change their loads, in order, and sometimes their settings with them. */
final class BoardExchange implements Neighbourhood {
    private final SpotFinder free;

    BoardExchange(PlanSums sums) {
        free = new SpotFinder(sums);
    }

    @Override
    public boolean draw(PlanSums sums, Targets targets, SplittableRandom random, DraftMove draft) {
        CompiledProject compiled = sums.compiled;
        Output output = sums.outputOf(targets.load(random));
        if (output == null) {
            return false;
        }
        int board = output.board();
        int other = random.nextInt(compiled.boardCount);
        BoardOrder here = new BoardOrder(sums, board);
        BoardOrder there = new BoardOrder(sums, other);
        boolean fits = compiled.outputCount(other) >= here.size() && compiled.outputCount(board) >= there.size();
        if (other == board || !fits) {
            return false;
        }
        free.clear();
        free.leaveFor(here.loads(), other);
        free.leaveFor(there.loads(), board);
        wire(sums, here, other, draft);
        wire(sums, there, board, draft);
        if (random.nextBoolean() && compiled.startDelays[board] == compiled.startDelays[other]) {
            BoardClock clock = sums.clock();
            draft.set(board, clock.startDelay(other), clock.step(other));
            draft.set(other, clock.startDelay(board), clock.step(board));
        }
        return free.settle(here.loads(), other, random, draft)
                && free.settle(there.loads(), board, random, draft)
                && draft.keepsRanges();
    }

    /** Each load keeps its ordinal where that board has room for all that follow; else they move up. */
    private static void wire(PlanSums sums, BoardOrder order, int to, DraftMove draft) {
        CompiledProject compiled = sums.compiled;
        int outputs = compiled.outputCount(to);
        int next = 0;
        for (int i = 0; i < order.size(); i++) {
            int load = order.load(i);
            int latest = outputs - (order.size() - i);
            int ordinal = Math.max(next, Math.min(latest, sums.outputOf(load).ordinal()));
            draft.wire(load, compiled.output(to, ordinal));
            next = ordinal + 1;
        }
    }
}
