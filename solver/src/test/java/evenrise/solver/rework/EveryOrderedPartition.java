package evenrise.solver.rework;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.function.Consumer;

/** Every way to do some changes in stages, one after another. */
final class EveryOrderedPartition {
    private EveryOrderedPartition() {}

    static void of(int changes, Consumer<List<BitSet>> taker) {
        grow((1 << changes) - 1, new ArrayList<>(), taker);
    }

    private static void grow(int left, List<BitSet> stages, Consumer<List<BitSet>> taker) {
        if (left == 0) {
            taker.accept(List.copyOf(stages));
            return;
        }
        for (int next = left; next > 0; next = (next - 1) & left) {
            stages.add(BitSet.valueOf(new long[] {next}));
            grow(left & ~next, stages, taker);
            stages.remove(stages.size() - 1);
        }
    }
}
