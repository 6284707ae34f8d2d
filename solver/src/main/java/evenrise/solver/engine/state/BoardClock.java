package evenrise.solver.engine.state;

/** When each board starts and how it is set; boards that follow one another start when the one before has ended. */
public final class BoardClock {
    private final CompiledProject compiled;
    private final int[] loadOnOutput;
    private final Setting[] startDelay;
    private final Setting[] step;
    private final Setting[] nextDelay;
    private final Setting[] nextStep;
    private final long[] startMicros;
    private final IntBag retimed;

    /** Every board starts with the first setting that its type offers. */
    BoardClock(CompiledProject compiled, int[] loadOnOutput) {
        this.compiled = compiled;
        this.loadOnOutput = loadOnOutput;
        startDelay = new Setting[compiled.boardCount];
        step = new Setting[compiled.boardCount];
        for (int board = 0; board < compiled.boardCount; board++) {
            startDelay[board] = compiled.startDelays[board][0];
            step[board] = compiled.steps[board][0];
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
                startDelay[board] = nextDelay[board];
                step[board] = nextStep[board];
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

    /** On time of the last used output; the board's own start where none is used. */
    private long endMicros(int board) {
        for (int k = compiled.firstOutput[board + 1] - 1; k >= compiled.firstOutput[board]; k--) {
            if (loadOnOutput[k] != CompiledProject.NONE) {
                return onMicros(compiled.outputs.get(k));
            }
        }
        return startMicros[board];
    }

    long onMicros(Output output) {
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
