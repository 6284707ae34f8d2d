package evenrise.solver.engine.state;

/**
 * When each board starts and how it is set; boards that follow one another start when the one before has ended. On some
 * boards each output has a time of its own, which goes with the load.
 */
public final class BoardClock {
    private final CompiledProject compiled;
    private final int[] loadOnOutput;
    private final Setting[] timeOf;
    private final Setting[] startDelay;
    private final Setting[] step;
    private final Setting[] nextDelay;
    private final Setting[] nextStep;
    private final long[] startMicros;
    private final IntBag retimed;
    private int movedSettings;

    /** Every board starts with the first setting that its type offers. */
    BoardClock(CompiledProject compiled, int[] loadOnOutput, Setting[] timeOf) {
        this.compiled = compiled;
        this.loadOnOutput = loadOnOutput;
        this.timeOf = timeOf;
        startDelay = new Setting[compiled.boardCount];
        step = new Setting[compiled.boardCount];
        for (int board = 0; board < compiled.boardCount; board++) {
            startDelay[board] = compiled.startDelays[board][0];
            step[board] = compiled.steps[board][0];
        }
        for (int board = 0; compiled.earlier != null && board < compiled.boardCount; board++) {
            movedSettings += isMoved(board) ? 1 : 0;
        }
        nextDelay = startDelay.clone();
        nextStep = step.clone();
        startMicros = new long[compiled.boardCount];
        retimed = new IntBag(compiled.boardCount);
        for (int board : compiled.boardOrder) {
            startMicros[board] = compiled.after[board] == CompiledProject.NONE ? 0 : endMicros(compiled.after[board]);
        }
    }

    void propose(int board, Setting delay, Setting stepSetting) {
        nextDelay[board] = delay;
        nextStep[board] = stepSetting;
    }

    /**
     * Boards whose loads come on at other times than before: those set anew, and those that follow a touched board whose
     * end has moved. Start times and settings are renewed by the way.
     */
    int[] retimed(IntBag touched) {
        retimed.clear();
        for (int i = 0; i < touched.size(); i++) {
            int board = touched.get(i);
            if (nextDelay[board] != startDelay[board] || nextStep[board] != step[board]) {
                if (compiled.earlier != null) {
                    movedSettings -= isMoved(board) ? 1 : 0;
                }
                startDelay[board] = nextDelay[board];
                step[board] = nextStep[board];
                if (compiled.earlier != null) {
                    movedSettings += isMoved(board) ? 1 : 0;
                }
                retimed.add(board);
            }
        }
        for (int i = 0; i < touched.size(); i++) {
            pushFollowers(touched.get(i));
        }
        int[] boards = new int[retimed.size()];
        for (int i = 0; i < boards.length; i++) {
            boards[i] = retimed.get(i);
        }
        return boards;
    }

    private boolean isMoved(int board) {
        return compiled.earlier.isSetAnew(board, startDelay[board], step[board]);
    }

    /** Boards set otherwise than in the earlier plan. */
    int movedSettings() {
        return movedSettings;
    }

    private void pushFollowers(int board) {
        for (int follower : compiled.followers[board]) {
            long start = endMicros(board);
            if (start != startMicros[follower]) {
                startMicros[follower] = start;
                retimed.add(follower);
                pushFollowers(follower);
            }
        }
    }

    /** When boards that follow it start: with the last used output, or with the last of all; its own start where none is used. */
    private long endMicros(int board) {
        if (compiled.times[board] != null) {
            return latestMicros(board);
        }
        for (int k = compiled.firstOutput[board + 1] - 1; k >= compiled.firstOutput[board]; k--) {
            if (loadOnOutput[k] != CompiledProject.NONE) {
                int last = compiled.passesOnAfterAll[board] ? compiled.firstOutput[board + 1] - 1 : k;
                return steppedMicros(compiled.outputs.get(last));
            }
        }
        return startMicros[board];
    }

    private long latestMicros(int board) {
        long latest = startMicros[board];
        for (int k = compiled.firstOutput[board]; k < compiled.firstOutput[board + 1]; k++) {
            if (loadOnOutput[k] != CompiledProject.NONE) {
                latest = Math.max(latest, onMicros(loadOnOutput[k], compiled.outputs.get(k)));
            }
        }
        return latest;
    }

    /** When a load comes on by an output. */
    public long onMicros(int load, Output output) {
        Setting[] times = compiled.times[output.board()];
        return times == null
                ? steppedMicros(output)
                : startMicros[output.board()]
                        + Setting.nearest(times, timeOf[load]).micros();
    }

    private long steppedMicros(Output output) {
        int board = output.board();
        return startMicros[board] + startDelay[board].micros() + output.ordinal() * step[board].micros();
    }

    public long startMicros(int board) {
        return startMicros[board];
    }

    public Setting startDelay(int board) {
        return startDelay[board];
    }

    public Setting step(int board) {
        return step[board];
    }
}
