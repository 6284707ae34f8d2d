package evenrise.solver.exhaustive;

import evenrise.solver.exhaustive.Timetable.End;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Sequences of timetables by who shares a phase. Mostly one phase alone shows that there is none below a limit, and many
 * sharings put the same loads on one phase: what was shown of them is kept.
 */
final class Sequences {
    /** A phase of a timetable up to an end, with its loads as bits. */
    private record Case(Timetable timetable, int instants, long loads) {
        @Override
        public boolean equals(Object other) {
            return other instanceof Case it
                    && timetable == it.timetable
                    && instants == it.instants
                    && loads == it.loads;
        }

        @Override
        public int hashCode() {
            return (31 * System.identityHashCode(timetable) + instants) * 31 + Long.hashCode(loads);
        }
    }

    /** What is known of a case: no sequence up to a limit, one from a limit on; both in amperes. */
    private static final class Known {
        private double noneAmps = Double.NEGATIVE_INFINITY;
        private double someAmps = Double.POSITIVE_INFINITY;
    }

    /** Kept in memory, a few hundred bytes each; then the trees begin anew. */
    private static final long MOST_STATES = 500_000;

    private final SmallProject project;
    private final Steps steps;
    private final Map<Case, Known> known = new HashMap<>();

    private final Map<Timetable, int[]> tails = new IdentityHashMap<>();
    private final Tails numbers = new Tails();
    private final Map<Sharing, List<Integer>> orders = new IdentityHashMap<>();

    /** By the loads on the one phase that each of them watches. */
    private final Map<Long, SequenceTree> trees = new HashMap<>();

    private long states;

    Sequences(SmallProject project, Steps steps) {
        this.project = project;
        this.steps = steps;
    }

    /** Whether there is none with the supply's peak within {@code limitAmps}, since one of its phases has none by itself. */
    boolean areRefutedByOnePhase(Sharing sharing, Timetable timetable, End end, double limitAmps) {
        return byWeight(sharing).stream().anyMatch(phase -> isRefuted(sharing, phase, timetable, end, limitAmps));
    }

    /** The kind at each of the timetable's instants up to an end, or -1, with the supply's peak within {@code limitAmps}. */
    Optional<int[]> find(Sharing sharing, Timetable timetable, End end, double limitAmps) {
        return areRefutedByOnePhase(sharing, timetable, end, limitAmps)
                ? Optional.empty()
                : new SequenceTree(project, sharing.phaseSets(), (1 << project.phases) - 1, steps)
                        .find(timetable.instants(), end.instants(), tails(timetable), limitAmps);
    }

    private int[] tails(Timetable timetable) {
        return tails.computeIfAbsent(timetable, any -> numbers.of(timetable.instants()));
    }

    /** Phases, what has to bear most before the others. */
    private List<Integer> byWeight(Sharing sharing) {
        return orders.computeIfAbsent(
                sharing,
                any -> IntStream.range(0, project.phases)
                        .boxed()
                        .sorted(Comparator.comparingDouble(phase -> -basesAmps(sharing.on(phase))))
                        .toList());
    }

    private double basesAmps(long loads) {
        return project.loads.stream()
                .filter(load -> (loads & 1L << load.index()) != 0)
                .mapToDouble(SmallLoad::baseAmps)
                .sum();
    }

    private boolean isRefuted(Sharing sharing, int phase, Timetable timetable, End end, double limitAmps) {
        long loads = sharing.on(phase);
        Known it = known.computeIfAbsent(new Case(timetable, end.instants(), loads), any -> new Known());
        if (limitAmps > it.noneAmps && limitAmps < it.someAmps) {
            SequenceTree tree = trees.computeIfAbsent(
                    loads, any -> new SequenceTree(project, sharing.phaseSets(), 1 << phase, steps));
            states -= tree.size();
            boolean isFound = tree.find(timetable.instants(), end.instants(), tails(timetable), limitAmps)
                    .isPresent();
            states += tree.size();
            if (states > MOST_STATES) {
                trees.clear();
                states = 0;
            }
            if (isFound) {
                it.someAmps = limitAmps;
            } else {
                it.noneAmps = limitAmps;
            }
        }
        return limitAmps <= it.noneAmps;
    }
}
