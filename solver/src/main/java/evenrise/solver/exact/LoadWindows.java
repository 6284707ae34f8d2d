package evenrise.solver.exact;

import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.TreeSet;

/**
 * Which of the times that its outputs reach order leaves each switched load, in microseconds: what comes before it has to
 * have come on and settled, and it has to leave time for what comes after it. Every step forgives what comparisons of times
 * forgive.
 */
final class LoadWindows {
    private final List<Load> switched;
    private final Map<Load, NavigableSet<Long>> times = new LinkedHashMap<>();

    /** @param latestMicros past which nothing comes on */
    LoadWindows(Project project, ReachableTimes reachable, long latestMicros) {
        switched = project.loads().stream().filter(Load::switched).toList();
        switched.forEach(
                load -> times.put(load, new TreeSet<>(reachable.of(load).headSet(latestMicros, true))));
        for (boolean isNarrower = true; isNarrower; ) {
            isNarrower = false;
            for (Load earlier : switched) {
                for (Load later : switched) {
                    long wait = waitMicros(earlier, later);
                    if (wait != Long.MIN_VALUE) {
                        isNarrower |= narrow(earlier, later, wait - ExactModelUnits.TOLERANCE_MICROS);
                    }
                }
            }
        }
    }

    NavigableSet<Long> of(Load load) {
        return times.get(load);
    }

    private boolean narrow(Load earlier, Load later, long wait) {
        NavigableSet<Long> first = times.get(earlier);
        NavigableSet<Long> second = times.get(later);
        if (first.isEmpty() || second.isEmpty()) {
            return false;
        }
        boolean isNarrower = !second.headSet(first.first() + wait, false).isEmpty();
        second.headSet(first.first() + wait, false).clear();
        if (second.isEmpty()) {
            return true;
        }
        NavigableSet<Long> tooLate = first.tailSet(second.last() - wait, false);
        isNarrower |= !tooLate.isEmpty();
        tooLate.clear();
        return isNarrower;
    }

    /** From one load to the other; {@link Long#MIN_VALUE} where there is no order. */
    private static long waitMicros(Load earlier, Load later) {
        long wait = Long.MIN_VALUE;
        if (later.comesAfter().contains(earlier.id())) {
            wait = ExactModelOrder.settleMicros(earlier.settleSeconds());
        }
        if (earlier.role().compareTo(later.role()) < 0) {
            boolean isSettled = earlier.role() == Role.PROCESSING && later.role() == Role.AMPLIFIER;
            wait = Math.max(wait, isSettled ? ExactModelOrder.settleMicros(earlier.settleSeconds()) : 0);
        }
        return wait;
    }
}
