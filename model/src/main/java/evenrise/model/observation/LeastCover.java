package evenrise.model.observation;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/**
 * The least number of sets that hold every element: by looking at the sets of the element that fewest hold, and leaving a
 * branch whose count and bound reach the best so far. The bound counts elements of which no set holds two. After so many
 * branches the best so far stands, beside what no cover can be less than.
 */
final class LeastCover {
    /** A second or so; usual plants need some dozens. */
    static final int MOST_BRANCHES = 200_000;

    private final List<BitSet> sets;
    private final int elements;
    private final int mostBranches;
    private List<Integer> best;
    private int branches;

    /**
     * @param sets indices of those chosen, rising
     * @param atLeast what no cover can be less than
     */
    record Cover(List<Integer> sets, int atLeast) {
        boolean isLeast() {
            return sets.size() == atLeast;
        }
    }

    private LeastCover(List<BitSet> sets, int elements, int mostBranches) {
        this.sets = sets;
        this.elements = elements;
        this.mostBranches = mostBranches;
    }

    /** @param sets which together hold all of the elements 0 to elements - 1 */
    static Cover of(List<BitSet> sets, int elements, int mostBranches) {
        LeastCover it = new LeastCover(sets, elements, mostBranches);
        BitSet open = new BitSet();
        open.set(0, elements);
        it.best = it.greedy(open);
        int bound = it.apart(open);
        it.branch(open, new ArrayList<>());
        boolean isProven = it.branches <= mostBranches;
        return new Cover(it.best.stream().sorted().toList(), isProven ? it.best.size() : bound);
    }

    /** Always the set that holds most of what is open. */
    private List<Integer> greedy(BitSet all) {
        BitSet open = (BitSet) all.clone();
        List<Integer> chosen = new ArrayList<>();
        while (!open.isEmpty()) {
            int most = -1;
            for (int i = 0; i < sets.size(); i++) {
                if (most < 0 || shared(sets.get(i), open) > shared(sets.get(most), open)) {
                    most = i;
                }
            }
            if (most < 0 || shared(sets.get(most), open) == 0) {
                throw new IllegalArgumentException("no set holds element " + open.nextSetBit(0) + " of " + elements);
            }
            chosen.add(most);
            open.andNot(sets.get(most));
        }
        return chosen;
    }

    private static int shared(BitSet set, BitSet open) {
        BitSet both = (BitSet) set.clone();
        both.and(open);
        return both.cardinality();
    }

    /** How many open elements were found of which no set holds two: each asks for a set of its own. */
    private int apart(BitSet open) {
        BitSet left = (BitSet) open.clone();
        int count = 0;
        while (!left.isEmpty()) {
            int rarest = rarest(left);
            sets.stream().filter(each -> each.get(rarest)).forEach(left::andNot);
            count++;
        }
        return count;
    }

    private int rarest(BitSet open) {
        int rarest = -1;
        long fewest = Long.MAX_VALUE;
        for (int each = open.nextSetBit(0); each >= 0; each = open.nextSetBit(each + 1)) {
            int element = each;
            long holders = sets.stream().filter(set -> set.get(element)).count();
            if (holders < fewest) {
                fewest = holders;
                rarest = each;
            }
        }
        return rarest;
    }

    private void branch(BitSet open, List<Integer> chosen) {
        if (open.isEmpty()) {
            if (chosen.size() < best.size()) {
                best = List.copyOf(chosen);
            }
            return;
        }
        if (++branches > mostBranches || chosen.size() + apart(open) >= best.size()) {
            return;
        }
        int rarest = rarest(open);
        for (int i = 0; i < sets.size(); i++) {
            if (sets.get(i).get(rarest)) {
                BitSet left = (BitSet) open.clone();
                left.andNot(sets.get(i));
                chosen.add(i);
                branch(left, chosen);
                chosen.remove(chosen.size() - 1);
            }
        }
    }
}
