package evenrise.solver.engine.move;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.PlanSums;
import java.util.Arrays;
import java.util.SplittableRandom;

/** The loads of one board in output order, to be re-ordered, shortened or lengthened, and laid out on outputs again. */
final class BoardOrder {
    private final PlanSums sums;
    private final CompiledProject compiled;
    private final int board;
    private final int[] loads;
    private final boolean[] used;
    private int size;

    BoardOrder(PlanSums sums, int board) {
        this.sums = sums;
        this.compiled = sums.compiled;
        this.board = board;
        int outputs = compiled.outputCount(board);
        loads = new int[outputs];
        used = new boolean[outputs];
        for (int k = 0; k < outputs; k++) {
            int load = sums.loadOnOutput(compiled.firstOutput[board] + k);
            if (load != CompiledProject.NONE) {
                loads[size++] = load;
                used[k] = true;
            }
        }
    }

    int size() {
        return size;
    }

    int load(int position) {
        return loads[position];
    }

    /** The loads, in order. */
    int[] loads() {
        return Arrays.copyOf(loads, size);
    }

    int freeOutputs() {
        return loads.length - size;
    }

    /** First position of the run that {@code position} belongs to; a load without a group is a run of its own. */
    int runStart(int position) {
        int start = position;
        while (start > 0 && sameRun(start - 1, position)) {
            start--;
        }
        return start;
    }

    /** Position behind the run that {@code position} belongs to. */
    int runEnd(int position) {
        int end = position + 1;
        while (end < size && sameRun(end, position)) {
            end++;
        }
        return end;
    }

    private boolean sameRun(int one, int other) {
        int group = compiled.group[loads[one]];
        return group != CompiledProject.NONE && group == compiled.group[loads[other]];
    }

    /** Turns the loads in {@code [from, to)} so that the one at {@code middle} comes first. */
    void rotate(int from, int middle, int to) {
        int[] turned = new int[to - from];
        System.arraycopy(loads, middle, turned, 0, to - middle);
        System.arraycopy(loads, from, turned, to - middle, middle - from);
        System.arraycopy(turned, 0, loads, from, turned.length);
    }

    /** Replaces the loads in {@code [from, to)} by others; outputs are given up or taken as their number changes. */
    boolean replace(int from, int to, int[] arrivals, SplittableRandom random) {
        int newSize = size - (to - from) + arrivals.length;
        if (newSize > loads.length) {
            return false;
        }
        int firstUsed = nthUsed(from);
        int surplus = to - from - arrivals.length;
        for (int k = nthUsed(Math.max(from, to - 1)); surplus > 0; k--) {
            if (used[k]) {
                used[k] = false;
                surplus--;
            }
        }
        int missing = -surplus;
        for (int k = firstUsed; missing > 0; k = random.nextInt(loads.length)) {
            if (!used[k]) {
                used[k] = true;
                missing--;
            }
        }
        int[] changed = new int[loads.length];
        System.arraycopy(loads, 0, changed, 0, from);
        System.arraycopy(arrivals, 0, changed, from, arrivals.length);
        System.arraycopy(loads, to, changed, from + arrivals.length, size - to);
        System.arraycopy(changed, 0, loads, 0, newSize);
        size = newSize;
        return true;
    }

    private int nthUsed(int n) {
        int seen = 0;
        for (int k = 0; k < used.length; k++) {
            if (used[k] && seen++ == n) {
                return k;
            }
        }
        return 0;
    }

    /** Sketches the loads onto the outputs in use, in order. */
    void layOut(DraftMove draft) {
        int next = 0;
        for (int k = 0; k < used.length; k++) {
            if (used[k]) {
                Output output = compiled.output(board, k);
                if (sums.outputOf(loads[next]) != output) {
                    draft.wire(loads[next], output);
                }
                next++;
            }
        }
    }

    @Override
    public String toString() {
        return Arrays.toString(Arrays.copyOf(loads, size));
    }
}
