package evenrise.solver.engine.move;

import evenrise.solver.engine.state.BoardClock;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.PlanSums;
import evenrise.solver.engine.state.Setting;
import java.util.SplittableRandom;

/** A board is set anew: a start delay nearby or any, another step, both, or the settings of another board. */
public final class BoardRetime implements Neighbourhood {
    private static final int NEARBY = 4;

    @Override
    public boolean draw(PlanSums sums, Targets targets, SplittableRandom random, DraftMove draft) {
        CompiledProject compiled = sums.compiled;
        Output output = sums.outputOf(targets.load(random));
        if (output == null) {
            return false;
        }
        int board = output.board();
        if (compiled.times[board] != null) {
            return shiftAll(sums, board, random, draft);
        }
        BoardClock clock = sums.clock();
        Setting delay = clock.startDelay(board);
        Setting step = clock.step(board);
        Setting[] delays = compiled.startDelays[board];
        Setting[] steps = compiled.steps[board];
        switch (random.nextInt(8)) {
            case 0 -> delay = delays[random.nextInt(delays.length)];
            case 1 -> step = steps[random.nextInt(steps.length)];
            case 2 -> {
                delay = delays[random.nextInt(delays.length)];
                step = steps[random.nextInt(steps.length)];
            }
            case 3 -> {
                int other = random.nextInt(compiled.boardCount);
                if (compiled.startDelays[other] != delays || other == board) {
                    return false;
                }
                draft.set(board, clock.startDelay(other), clock.step(other));
                draft.set(other, delay, step);
                return clock.startDelay(other) != delay || clock.step(other) != step;
            }
            default -> {
                int shift = 1 + random.nextInt(NEARBY);
                int index = delay.index() + (random.nextBoolean() ? shift : -shift);
                delay = delays[Math.max(0, Math.min(delays.length - 1, index))];
                if (random.nextInt(4) == 0) {
                    step = steps[random.nextInt(steps.length)];
                }
            }
        }
        draft.set(board, delay, step);
        return delay != clock.startDelay(board) || step != clock.step(board);
    }

    /** All outputs with times of their own come on earlier or later by as much. */
    private static boolean shiftAll(PlanSums sums, int board, SplittableRandom random, DraftMove draft) {
        CompiledProject compiled = sums.compiled;
        Setting[] times = compiled.times[board];
        int far = 1 + random.nextInt(random.nextBoolean() ? NEARBY : times.length);
        int shift = random.nextBoolean() ? far : -far;
        for (int k = compiled.firstOutput[board]; k < compiled.firstOutput[board + 1]; k++) {
            int load = sums.loadOnOutput(k);
            if (load != CompiledProject.NONE) {
                int index = Setting.nearest(times, sums.timeOf(load)).index() + shift;
                draft.time(load, times[Math.max(0, Math.min(times.length - 1, index))]);
            }
        }
        return true;
    }
}
