package evenrise.solver.engine.move;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanSums;
import evenrise.solver.engine.state.Setting;
import java.util.SplittableRandom;

/**
 * Sets a board so that loads keep about the times they have: another setting moves the lattice of instants that a board
 * can reach, and the loads take the nearest outputs on it.
 */
final class Lattice {
    private final PlanSums sums;
    private final CompiledProject compiled;

    Lattice(PlanSums sums) {
        this.sums = sums;
        this.compiled = sums.compiled;
    }

    /**
     * Lays loads, in order, onto a board that switches nothing else: one of its steps, and the start delay that brings the
     * first of them nearest to its present time, or all of them as much earlier or later as chance has it.
     */
    void follow(int[] loads, int board, SplittableRandom random, DraftMove draft) {
        int outputs = compiled.outputCount(board);
        long[] wanted = new long[loads.length];
        long shift = random.nextInt(2) == 0 ? 0 : shift(loads, random);
        for (int i = 0; i < loads.length; i++) {
            wanted[i] = onMicros(loads[i]) + shift;
        }
        if (compiled.times[board] != null) {
            timeEach(loads, wanted, board, draft);
            return;
        }
        Setting[] steps = compiled.steps[board];
        Setting step = steps[random.nextInt(steps.length)];
        int lead = random.nextInt(outputs - loads.length + 1);
        long start = sums.clock().startMicros(board);
        Setting delay = nearest(compiled.startDelays[board], wanted[0] - start - lead * step.micros());
        draft.set(board, delay, step);
        int next = 0;
        for (int i = 0; i < loads.length; i++) {
            long ordinal = Math.floorDiv(wanted[i] - start - delay.micros() + step.micros() / 2, step.micros());
            int latest = outputs - (loads.length - i);
            next = (int) Math.max(next, Math.min(latest, ordinal));
            draft.wire(loads[i], compiled.output(board, next++));
        }
    }

    /** Where each output has a time of its own, the loads take the times next to those wanted. */
    private void timeEach(int[] loads, long[] wanted, int board, DraftMove draft) {
        long start = sums.clock().startMicros(board);
        for (int i = 0; i < loads.length; i++) {
            draft.wire(loads[i], compiled.output(board, i));
            draft.time(loads[i], Setting.nearest(compiled.times[board], wanted[i] - start));
        }
    }

    private long onMicros(int load) {
        return compiled.instants.micros(sums.instantOf(load));
    }

    private long shift(int[] loads, SplittableRandom random) {
        long last = compiled.instants.micros(compiled.usefulInstants() - 1);
        return (long) (random.nextDouble() * last) - onMicros(loads[0]);
    }

    private static Setting nearest(Setting[] delays, long micros) {
        Setting best = delays[0];
        for (Setting delay : delays) {
            if (Math.abs(delay.micros() - micros) < Math.abs(best.micros() - micros)) {
                best = delay;
            }
        }
        return best;
    }
}
