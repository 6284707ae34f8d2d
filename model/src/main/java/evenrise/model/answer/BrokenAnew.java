package evenrise.model.answer;

import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Subject;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What one verdict breaks and another does not, or less. Two findings are of the same place where rule, kind and subjects
 * are the same.
 *
 * @param added broken after and not before, or by more than before
 * @param gone how many places were broken before and are not after
 */
public record BrokenAnew(List<BrokenRule> added, int gone) {
    /** Rounding of sums, in the unit of the figure. */
    private static final double SAME = 1e-9;

    private record Place(String rule, String kind, List<Subject> subjects) {
        static Place of(BrokenRule broken) {
            return new Place(broken.rule(), broken.kind(), broken.subjects());
        }
    }

    public static BrokenAnew of(List<BrokenRule> before, List<BrokenRule> after) {
        Map<Place, Deque<BrokenRule>> known = new HashMap<>();
        before.forEach(each ->
                known.computeIfAbsent(Place.of(each), any -> new ArrayDeque<>()).add(each));
        List<BrokenRule> added = new ArrayList<>();
        for (BrokenRule each : after) {
            BrokenRule earlier =
                    known.getOrDefault(Place.of(each), new ArrayDeque<>()).poll();
            if (earlier == null || excess(each) > excess(earlier) + SAME) {
                added.add(each);
            }
        }
        return new BrokenAnew(
                List.copyOf(added),
                known.values().stream().mapToInt(Deque::size).sum());
    }

    private static double excess(BrokenRule broken) {
        return broken.figure().isPresent() && broken.limit().isPresent()
                ? Math.abs(broken.figure().getAsDouble() - broken.limit().getAsDouble())
                : 0;
    }
}
