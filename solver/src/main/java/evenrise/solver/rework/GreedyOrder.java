package evenrise.solver.rework;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Finds a good order for many changes: whatever needs the system off first and together, then the smallest stage that can
 * be done, again and again, larger ones only where no smaller one can; then stages that share an outage are joined.
 */
final class GreedyOrder {
    private static final int MOST_PAIRS = 300;
    private static final int FEWEST_JOINS = 20;
    private static final int JOINS_TIMES_LOADS = 40_000;

    private final Passage passage;

    GreedyOrder(Passage passage) {
        this.passage = passage;
    }

    /** @return empty where every order that was tried makes something worse than at the start */
    Optional<List<BitSet>> stages(int atLeast) {
        List<BitSet> best = null;
        OrderCost least = null;
        for (boolean quietFirst : new boolean[] {true, false}) {
            Optional<List<BitSet>> found = build(quietFirst).map(stages -> joined(stages, atLeast));
            if (found.isPresent() && (least == null || cost(found.get()).compareTo(least) < 0)) {
                best = found.get();
                least = cost(best);
            }
        }
        return Optional.ofNullable(best);
    }

    OrderCost cost(List<BitSet> stages) {
        OrderCost cost = OrderCost.NOTHING;
        BitSet done = new BitSet();
        for (BitSet stage : stages) {
            cost = cost.plus(passage.unchecked(done, stage).cost());
            done.or(stage);
        }
        return cost;
    }

    private Optional<List<BitSet>> build(boolean quietFirst) {
        List<BitSet> stages = new ArrayList<>();
        BitSet done = new BitSet();
        BitSet all = passage.all();
        if (quietFirst) {
            BitSet quiet = closure(quiet(done), done);
            if (!quiet.isEmpty()) {
                extensions(quiet, done).stream()
                        .filter(set -> passage.way(done, set).isPresent())
                        .findFirst()
                        .ifPresent(set -> take(set, stages, done));
            }
        }
        while (done.cardinality() < all.cardinality()) {
            Optional<BitSet> next = next(done);
            if (next.isEmpty()) {
                return Optional.empty();
            }
            take(withAllOfThePanel(next.get(), done), stages, done);
        }
        return Optional.of(stages);
    }

    private static void take(BitSet set, List<BitSet> stages, BitSet done) {
        stages.add(set);
        done.or(set);
    }

    /** What else can be done while no more is dead than anyway, so that a panel goes off once. */
    private BitSet withAllOfThePanel(BitSet stage, BitSet done) {
        Isolation isolation = passage.isolation(stage);
        int systemsOff = passage.unchecked(done, stage).cost().systemOffs();
        BitSet larger = (BitSet) stage.clone();
        for (int change : left(done)) {
            BitSet one = passage.closure(change, done);
            Isolation its = passage.isolation(one);
            if (its.size() > 0
                    && isolation.panels().containsAll(its.panels())
                    && its.boards().stream()
                            .allMatch(board -> isolation.takesOff(passage.index, "", Optional.of(board)))) {
                larger.or(one);
            }
        }
        return passage.way(done, larger)
                .filter(way -> way.cost().systemOffs() <= systemsOff)
                .map(way -> larger)
                .orElse(stage);
    }

    private List<Integer> left(BitSet done) {
        return passage.all().stream()
                .filter(change -> !done.get(change))
                .boxed()
                .toList();
    }

    private BitSet quiet(BitSet done) {
        BitSet quiet = new BitSet();
        for (int change : left(done)) {
            BitSet one = BitSet.valueOf(new long[0]);
            one.set(change);
            if (passage.unchecked(done, one).isSystemOff()) {
                quiet.set(change);
            }
        }
        return quiet;
    }

    private BitSet closure(BitSet changes, BitSet done) {
        BitSet together = new BitSet();
        changes.stream().forEach(change -> together.or(passage.closure(change, done)));
        return together;
    }

    private Optional<BitSet> next(BitSet done) {
        Set<BitSet> smallest = new LinkedHashSet<>();
        left(done).forEach(change -> smallest.add(passage.closure(change, done)));
        List<BitSet> sorted = bySize(smallest);
        Optional<BitSet> found = first(sorted, done);
        for (int level = 1; found.isEmpty() && level < 4; level++) {
            Set<BitSet> larger = new LinkedHashSet<>();
            for (BitSet each : sorted) {
                List<BitSet> extended = extensions(each, done);
                larger.add(extended.get(Math.min(level, extended.size() - 1)));
            }
            found = first(bySize(larger), done);
            if (level == 1 && found.isEmpty()) {
                found = first(pairs(sorted), done);
            }
        }
        return found;
    }

    private Optional<BitSet> first(List<BitSet> sets, BitSet done) {
        return sets.stream().filter(set -> passage.way(done, set).isPresent()).findFirst();
    }

    private List<BitSet> bySize(Set<BitSet> sets) {
        return sets.stream()
                .sorted(Comparator.comparingInt(set -> passage.loads(set).size()))
                .toList();
    }

    private List<BitSet> pairs(List<BitSet> sets) {
        Set<BitSet> pairs = new LinkedHashSet<>();
        for (int i = 0; i < sets.size() && pairs.size() < MOST_PAIRS; i++) {
            for (int j = i + 1; j < sets.size() && pairs.size() < MOST_PAIRS; j++) {
                BitSet pair = (BitSet) sets.get(i).clone();
                pair.or(sets.get(j));
                pairs.add(pair);
            }
        }
        return bySize(pairs);
    }

    /** The set itself, then with its shutdown groups, with its boards, with everything. */
    private List<BitSet> extensions(BitSet set, BitSet done) {
        List<BitSet> all = new ArrayList<>(List.of(set));
        Set<String> groups = new HashSet<>();
        Set<String> boards = new HashSet<>();
        set.stream().forEach(change -> {
            groups.addAll(groups(change));
            boards.addAll(boards(change));
        });
        all.add(grown(set, done, change -> groups(change).stream().anyMatch(groups::contains)));
        all.add(grown(
                set,
                done,
                change -> groups(change).stream().anyMatch(groups::contains)
                        || boards(change).stream().anyMatch(boards::contains)));
        all.add(grown(set, done, change -> true));
        return all;
    }

    private BitSet grown(BitSet set, BitSet done, java.util.function.IntPredicate joins) {
        BitSet grown = (BitSet) set.clone();
        left(done).stream().filter(joins::test).forEach(grown::set);
        return closure(grown, done);
    }

    private Set<String> groups(int change) {
        return passage.isLoad(change)
                ? passage.index
                        .load(passage.load(change).load())
                        .flatMap(load -> load.shutdownGroup())
                        .map(Set::of)
                        .orElse(Set.of())
                : Set.of();
    }

    private Set<String> boards(int change) {
        Set<String> boards = new HashSet<>();
        if (passage.isLoad(change)) {
            passage.load(change).from().flatMap(seat -> seat.board()).ifPresent(boards::add);
            passage.load(change).to().board().ifPresent(boards::add);
        } else if (passage.isRemoval(change)) {
            passage.removal(change).from().board().ifPresent(boards::add);
        } else {
            boards.add(
                    passage.isTime(change)
                            ? passage.time(change).board()
                            : passage.setting(change).board());
        }
        return boards;
    }

    /** Joins stages as long as that makes the order cheaper, the later one done with the earlier or the other way. */
    private List<BitSet> joined(List<BitSet> stages, int atLeast) {
        int most = Math.max(atLeast, cost(stages).mostLockedOut());
        List<BitSet> kept = stages;
        int joins = Math.max(
                FEWEST_JOINS, JOINS_TIMES_LOADS / passage.project.loads().size());
        for (int tries = 0; tries < joins; ) {
            List<List<BitSet>> better = new ArrayList<>();
            for (int i = 0; i < kept.size(); i++) {
                for (int j = i + 1; j < kept.size(); j++) {
                    for (boolean early : new boolean[] {true, false}) {
                        List<BitSet> tried = join(kept, i, j, early);
                        if (isBetter(tried, kept, most)) {
                            better.add(tried);
                        }
                    }
                }
            }
            Optional<List<BitSet>> next =
                    better.stream().limit(joins).filter(this::holds).findFirst();
            tries += next.map(better::indexOf).orElse(joins) + 1;
            if (next.isEmpty()) {
                return kept;
            }
            kept = next.get();
        }
        return kept;
    }

    private boolean isBetter(List<BitSet> tried, List<BitSet> kept, int most) {
        OrderCost now = cost(tried);
        OrderCost then = cost(kept);
        if (now.systemOffs() != then.systemOffs()) {
            return now.systemOffs() < then.systemOffs();
        }
        if (now.isolations() != then.isolations()) {
            return now.isolations() < then.isolations();
        }
        return now.mostLockedOut() <= most
                && (now.outages() < then.outages()
                        || (now.outages() == then.outages() && now.stages() < then.stages()));
    }

    private static List<BitSet> join(List<BitSet> stages, int i, int j, boolean early) {
        List<BitSet> joined = new ArrayList<>(stages);
        BitSet both = (BitSet) stages.get(i).clone();
        both.or(stages.get(j));
        joined.set(early ? i : j, both);
        joined.remove(early ? j : i);
        return joined;
    }

    private boolean holds(List<BitSet> stages) {
        BitSet done = new BitSet();
        for (BitSet stage : stages) {
            if (passage.way(done, stage).isEmpty()) {
                return false;
            }
            done.or(stage);
        }
        return true;
    }
}
