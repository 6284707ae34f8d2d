package evenrise.solver.engine.fine;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import java.util.SplittableRandom;

/** Loads change outputs of their board: two of a group, one to a free output, those beside a free one, or two runs. */
final class OutputDraws implements FineDraws {
    private static final int NONE = CompiledProject.NONE;
    /** Of so many draws, exchanges, and then shifts; the rest turns runs. */
    private static final int OF = 8;

    private static final int EXCHANGES = 5;
    private static final int SHIFTS = 7;

    private final FinePlan plan;
    private final CompiledProject compiled;
    private int[] loads = new int[16];
    private int[] outputs = new int[16];
    private int size;

    OutputDraws(FinePlan plan) {
        this.plan = plan;
        compiled = plan.compiled;
    }

    @Override
    public boolean draw(FineChange change, SplittableRandom random) {
        if (plan.timed.length == 0) {
            return false;
        }
        int kind = random.nextInt(OF);
        if (kind < EXCHANGES) {
            return exchange(change, random);
        }
        return kind < SHIFTS ? shift(change, random) : turn(change, random);
    }

    private boolean exchange(FineChange change, SplittableRandom random) {
        int load = HotLoads.draw(plan, plan.timed, random);
        Output from = plan.outputOf[load];
        for (int i = 0; i < HotLoads.TRIES; i++) {
            Output to = compiled.output(from.board(), random.nextInt(compiled.outputCount(from.board())));
            int occupant = plan.loadOnOutput[to.index()];
            boolean keepsRuns = occupant == NONE ? fits(load, to) : compiled.group[occupant] == compiled.group[load];
            if (to != from && keepsRuns) {
                if (wire(load, to, change) && (occupant == NONE || wire(occupant, from, change))) {
                    return true;
                }
                change.clear(NONE);
            }
        }
        return false;
    }

    private boolean wire(int load, Output to, FineChange change) {
        int board = to.board();
        int instant = plan.instant(board, to.ordinal(), plan.delay[board], plan.step[board]);
        if (instant >= plan.profile.size() || !compiled.mayUse(load, to)) {
            return false;
        }
        change.add(load, plan.placeOf[load], to, instant);
        return true;
    }

    /** Whether a load may take a free output of its board without interrupting a group or leaving its own. */
    private boolean fits(int load, Output to) {
        int group = compiled.group[load];
        int left = groupBeside(load, to, -1);
        int right = groupBeside(load, to, 1);
        if (group != NONE && (left == group || right == group)) {
            return true;
        }
        boolean inside = left != NONE && left == right;
        return !inside && (group == NONE || compiled.groupMembers[group].length == 1);
    }

    private int groupBeside(int load, Output from, int direction) {
        int low = compiled.firstOutput[from.board()];
        int high = compiled.firstOutput[from.board() + 1];
        for (int k = from.index() + direction; k >= low && k < high; k += direction) {
            int other = plan.loadOnOutput[k];
            if (other != NONE && other != load) {
                return compiled.group[other];
            }
        }
        return NONE;
    }

    private boolean shift(FineChange change, SplittableRandom random) {
        Output from = plan.outputOf[HotLoads.draw(plan, plan.timed, random)];
        for (int i = 0; i < HotLoads.TRIES; i++) {
            int gap = compiled.firstOutput[from.board()] + random.nextInt(compiled.outputCount(from.board()));
            if (plan.loadOnOutput[gap] == NONE) {
                int direction = Integer.signum(from.index() - gap);
                for (int k = gap + direction; k != from.index() + direction; k += direction) {
                    int load = plan.loadOnOutput[k];
                    if (load != NONE && !wire(load, compiled.outputs.get(k - direction), change)) {
                        return false;
                    }
                }
                return true;
            }
        }
        return false;
    }

    /** A run changes places with those behind it. */
    private boolean turn(FineChange change, SplittableRandom random) {
        read(plan.boards[random.nextInt(plan.boards.length)]);
        int from = random.nextInt(size);
        while (from > 0 && isOneRun(from - 1, from)) {
            from--;
        }
        int middle = runEnd(from);
        if (middle == size) {
            return false;
        }
        int end = runEnd(random.nextBoolean() ? middle : middle + random.nextInt(size - middle));
        for (int i = from; i < end; i++) {
            int turned = i + middle - from;
            int load = loads[turned < end ? turned : turned - end + from];
            Output to = compiled.outputs.get(outputs[i]);
            if (plan.outputOf[load] != to && !wire(load, to, change)) {
                return false;
            }
        }
        return true;
    }

    private void read(int board) {
        size = 0;
        if (loads.length < compiled.outputCount(board)) {
            loads = new int[compiled.outputCount(board)];
            outputs = new int[loads.length];
        }
        for (int k = compiled.firstOutput[board]; k < compiled.firstOutput[board + 1]; k++) {
            if (plan.loadOnOutput[k] != NONE) {
                outputs[size] = k;
                loads[size++] = plan.loadOnOutput[k];
            }
        }
    }

    private boolean isOneRun(int one, int other) {
        int group = compiled.group[loads[one]];
        return group != NONE && group == compiled.group[loads[other]];
    }

    private int runEnd(int position) {
        int end = position + 1;
        while (end < size && isOneRun(end, position)) {
            end++;
        }
        return end;
    }
}
