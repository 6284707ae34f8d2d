package evenrise.solver.compare;

import evenrise.model.project.BoardType;
import evenrise.solver.compare.GroupPacking.Answer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;

/**
 * What is known of which boards hold the shutdown groups of a system, and how much may be tried to know more. What fits some
 * boards fits more of them, and what does not fit some does not fit fewer. All packings together have a number of tries, each
 * a part of what is left: so a list of make-ups comes in a time of which the first few hard packings cannot take all, and what
 * is not decided stays in the list.
 */
final class PackingMemory {
    private static final long TRIES = 1_200_000;
    private static final int PART = 20;
    private static final int LEAST = 60;

    private final List<Map<BoardType, Integer>> fit = new ArrayList<>();
    private final List<Map<BoardType, Integer>> fitNot = new ArrayList<>();
    private final Map<Map<BoardType, Integer>, Answer> open = new HashMap<>();
    private long left;

    PackingMemory() {
        this(TRIES);
    }

    /** @param tries of all packings together, but for a few of each */
    PackingMemory(long tries) {
        this.left = tries;
    }

    /** @param packing of these boards, with so many tries at most */
    Answer answer(List<BoardType> boards, IntFunction<GroupPacking> packing) {
        Map<BoardType, Integer> counts = new HashMap<>();
        boards.forEach(type -> counts.merge(type, 1, Integer::sum));
        if (fit.stream().anyMatch(known -> isWithin(known, counts))) {
            return Answer.FITS;
        }
        if (fitNot.stream().anyMatch(known -> isWithin(counts, known))) {
            return Answer.FITS_NOT;
        }
        return open.computeIfAbsent(counts, any -> tried(counts, packing));
    }

    private Answer tried(Map<BoardType, Integer> counts, IntFunction<GroupPacking> packing) {
        int most = (int) Math.max(LEAST, Math.min(GroupPacking.MOST_TRIES, left / PART));
        GroupPacking of = packing.apply(most);
        Answer answer = of.answer();
        left = Math.max(0, left - of.tries());
        if (answer == Answer.FITS) {
            fit.removeIf(known -> isWithin(counts, known));
            fit.add(counts);
        } else if (answer == Answer.FITS_NOT) {
            fitNot.removeIf(known -> isWithin(known, counts));
            fitNot.add(counts);
        }
        return answer;
    }

    /** Whether there are no more of any kind than in the other. */
    private static boolean isWithin(Map<BoardType, Integer> some, Map<BoardType, Integer> others) {
        return some.entrySet().stream().allMatch(each -> others.getOrDefault(each.getKey(), 0) >= each.getValue());
    }
}
