package evenrise.solver.engine.fine;

import evenrise.solver.engine.state.CompiledProject;
import java.util.SplittableRandom;

/** A board is set anew: a start delay nearby or any, another step, both, or two boards change their settings. */
final class SettingDraws implements FineDraws {
    private static final int NEARBY = 4;

    private final FinePlan plan;
    private final CompiledProject compiled;

    SettingDraws(FinePlan plan) {
        this.plan = plan;
        compiled = plan.compiled;
    }

    @Override
    public boolean draw(FineChange change, SplittableRandom random) {
        if (plan.timed.length == 0) {
            return false;
        }
        int board = plan.outputOf[HotLoads.draw(plan, plan.timed, random)].board();
        int delay = plan.delay[board];
        int step = plan.step[board];
        int delays = compiled.startDelays[board].length;
        int steps = compiled.steps[board].length;
        switch (random.nextInt(8)) {
            case 0 -> delay = random.nextInt(delays);
            case 1 -> step = random.nextInt(steps);
            case 2 -> {
                delay = random.nextInt(delays);
                step = random.nextInt(steps);
            }
            case 3 -> {
                return exchange(board, plan.boards[random.nextInt(plan.boards.length)], change);
            }
            default -> {
                int shift = 1 + random.nextInt(NEARBY);
                delay = Math.max(0, Math.min(delays - 1, delay + (random.nextBoolean() ? shift : -shift)));
                step = random.nextInt(4) == 0 ? random.nextInt(steps) : step;
            }
        }
        return (delay != plan.delay[board] || step != plan.step[board]) && set(board, delay, step, change);
    }

    /** Boards of one kind, or of kinds that offer as many settings. */
    private boolean exchange(int board, int other, FineChange change) {
        return other != board
                && compiled.startDelays[other].length == compiled.startDelays[board].length
                && compiled.steps[other].length == compiled.steps[board].length
                && set(board, plan.delay[other], plan.step[other], change)
                && set(other, plan.delay[board], plan.step[board], change);
    }

    private boolean set(int board, int delay, int step, FineChange change) {
        int first = compiled.firstOutput[board];
        for (int k = first; k < compiled.firstOutput[board + 1]; k++) {
            int load = plan.loadOnOutput[k];
            if (load != CompiledProject.NONE) {
                int instant = plan.instant(board, k - first, delay, step);
                if (instant >= plan.profile.size()) {
                    return false;
                }
                if (instant != plan.instantOf[load]) {
                    change.add(load, plan.placeOf[load], plan.outputOf[load], instant);
                }
            }
        }
        change.set(board, delay, step);
        return true;
    }
}
