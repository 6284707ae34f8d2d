package evenrise.solver.engine.state;

import java.util.Arrays;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.LongPredicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.LongStream;

/**
 * Leaves out some of the times that outputs offer, where chained boards could else reach more instants than are kept: then
 * the search counts every instant as it is, and believes no plan clean that breaks an order by a rounding. What is left
 * are times that the type offers; settings of stepped boards stay whole, and so do times at which a load is fixed to come
 * on.
 */
final class SparseTimes {
    /** So many times of a board's outputs are worth more than an even grid of all instants. */
    private static final int ENOUGH = 16;
    /** Intervals that are tried. */
    private static final int MOST_INTERVALS = 24;

    private final CompiledProject compiled;
    private final Setting[][] offered;
    private final Set<Long> fixed = new HashSet<>();
    private final long stepped;

    private SparseTimes(CompiledProject compiled) {
        this.compiled = compiled;
        this.offered = compiled.times.clone();
        for (long micros : compiled.fixedOnMicros) {
            if (micros != CompiledProject.NONE) {
                fixed.add(micros);
            }
        }
        long common = 0;
        for (int board = 0; board < compiled.boardCount; board++) {
            if (offered[board] == null) {
                common = InstantFinder.commonInterval(common, compiled.startDelays[board]);
                common = InstantFinder.commonInterval(common, compiled.steps[board]);
            }
        }
        stepped = common;
    }

    /** The instants of all that is offered, or, where these are too many, of what is left of it. */
    static Instants find(CompiledProject compiled) {
        InstantFinder finder = new InstantFinder(compiled);
        return finder.find()
                .or(() -> {
                    SparseTimes sparse = new SparseTimes(compiled);
                    Optional<Instants> found = sparse.thinned(finder);
                    sparse.list(found.isPresent());
                    return found;
                })
                // Stepped boards alone, whose settings share no interval: then times are rounded down to a fine grid.
                .orElseGet(finder::rounded);
    }

    private Optional<Instants> thinned(InstantFinder finder) {
        for (long interval : intervals(finder)) {
            keep(micros -> isOn(interval, micros));
            if (keepsEnough()) {
                Optional<Instants> found = finder.find();
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        int most = IntStream.range(0, offered.length)
                .filter(board -> offered[board] != null)
                .map(board -> offered[board].length)
                .max()
                .orElse(1);
        Optional<Instants> found = Optional.empty();
        for (int every = 2; found.isEmpty() && every < 2 * most; every *= 2) {
            keepEach(every);
            found = finder.find();
        }
        return found;
    }

    /** Whether a time is a multiple of the interval, or brings a fixed instant from a start that is one. */
    private boolean isOn(long interval, long micros) {
        return micros % interval == 0 || fixed.stream().anyMatch(on -> (on - micros) % interval == 0);
    }

    /** From fine to coarse, multiples of what all settings share that stepped boards' settings are multiples of. */
    private long[] intervals(InstantFinder finder) {
        long finest = finder.finestMicros();
        long end = stepped == 0 ? longestMicros() : stepped;
        return LongStream.rangeClosed(finder.fewestIntervals(), end / finest)
                .filter(count -> stepped % (count * finest) == 0)
                .map(count -> count * finest)
                .limit(MOST_INTERVALS)
                .toArray();
    }

    private long longestMicros() {
        return Arrays.stream(offered)
                .filter(Objects::nonNull)
                .mapToLong(times -> times[times.length - 1].micros())
                .max()
                .orElse(0);
    }

    private boolean keepsEnough() {
        return IntStream.range(0, offered.length)
                .filter(board -> offered[board] != null)
                .allMatch(board -> compiled.times[board].length >= Math.min(ENOUGH, offered[board].length));
    }

    private void keep(LongPredicate kept) {
        replace(times ->
                Arrays.stream(times).filter(each -> kept.test(each.micros())).toList());
    }

    private void keepEach(int every) {
        replace(times -> Arrays.stream(times)
                .filter(each -> each.index() % every == 0 || fixed.contains(each.micros()))
                .toList());
    }

    /** What is drawn from is what is left, or, where nothing helped, all that is offered. */
    private void list(boolean isThinned) {
        if (!isThinned) {
            System.arraycopy(offered, 0, compiled.times, 0, offered.length);
            return;
        }
        compiled.settings.removeAll(settings(offered));
        compiled.settings.addAll(settings(compiled.times));
    }

    private static Set<Setting> settings(Setting[][] times) {
        return Arrays.stream(times)
                .filter(Objects::nonNull)
                .flatMap(Arrays::stream)
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    /** Boards of one type share one list. */
    private void replace(Function<Setting[], List<Setting>> left) {
        Map<Setting[], Setting[]> known = new IdentityHashMap<>();
        for (int board = 0; board < offered.length; board++) {
            if (offered[board] != null) {
                compiled.times[board] = known.computeIfAbsent(offered[board], times -> numbered(left.apply(times)));
            }
        }
    }

    private static Setting[] numbered(List<Setting> left) {
        Setting[] numbered = new Setting[left.size()];
        Arrays.setAll(
                numbered, i -> new Setting(i, left.get(i).seconds(), left.get(i).micros()));
        return numbered;
    }
}
