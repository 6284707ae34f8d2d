package evenrise.solver.exhaustive;

import evenrise.solver.exhaustive.Timetable.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Numbers the ends of timetables, so that what was found of one counts for all that end alike. */
final class Tails {
    private record Tail(Instant first, int rest) {}

    private final Map<Tail, Integer> numbers = new HashMap<>();

    /** Of what comes from each of the instants on: the same number where all of that is the same. */
    int[] of(List<Instant> instants) {
        int[] tails = new int[instants.size()];
        int rest = -1;
        for (int at = instants.size() - 1; at >= 0; at--) {
            rest = numbers.computeIfAbsent(new Tail(instants.get(at), rest), any -> numbers.size());
            tails[at] = rest;
        }
        return tails;
    }
}
