package evenrise.solver.engine.state;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Finds the switch-on instants that the boards' settings can give. */
final class InstantFinder {
    private static final int MOST_REACHABLE = 1 << 16;

    private final CompiledProject compiled;

    InstantFinder(CompiledProject compiled) {
        this.compiled = compiled;
    }

    Instants find() {
        long grid = 0;
        for (Setting setting : compiled.settings) {
            grid = greatestCommonDivisor(grid, setting.micros());
        }
        grid = Math.max(1, grid);
        long latest = latestMicros();
        if (Instants.fitGrid(grid, latest)) {
            return Instants.grid(grid, latest);
        }
        // Chained boards with settings that share no interval may reach too many instants to keep: then the search, and
        // it alone, rounds times down to a fine grid.
        return reachable().map(Instants::of).orElseGet(() -> Instants.grid(latest / (MOST_REACHABLE - 1) + 1, latest));
    }

    private long latestMicros() {
        long latest = 0;
        long[] end = new long[compiled.boardCount];
        for (int board : compiled.boardOrder) {
            long start = compiled.after[board] == CompiledProject.NONE ? 0 : end[compiled.after[board]];
            long last = compiled.outputCount(board) - 1L;
            if (compiled.times[board] != null) {
                end[board] = start + max(compiled.times[board]);
                latest = Math.max(latest, end[board]);
                continue;
            }
            end[board] = start + max(compiled.startDelays[board]) + last * max(compiled.steps[board]);
            latest = Math.max(latest, end[board]);
        }
        return latest;
    }

    /** The reachable instants, sorted; empty where they are too many to keep. */
    private Optional<long[]> reachable() {
        Set<Long> all = new TreeSet<>(Set.of(0L));
        List<Set<Long>> ends = new ArrayList<>(Collections.nCopies(compiled.boardCount, Set.of()));
        for (int board : compiled.boardOrder) {
            Set<Long> starts =
                    compiled.after[board] == CompiledProject.NONE ? Set.of(0L) : ends.get(compiled.after[board]);
            Set<Long> end = new TreeSet<>(starts); // a board without a used output hands its own start on
            for (long start : starts) {
                for (int i = 0; compiled.times[board] != null && i < compiled.times[board].length; i++) {
                    end.add(start + compiled.times[board][i].micros());
                }
                for (Setting delay : compiled.startDelays[board]) {
                    for (Setting step : compiled.steps[board]) {
                        for (int k = 0; k < compiled.outputCount(board); k++) {
                            end.add(start + delay.micros() + k * step.micros());
                        }
                    }
                }
                if (end.size() > MOST_REACHABLE) {
                    return Optional.empty();
                }
            }
            ends.set(board, end);
            all.addAll(end);
        }
        return all.size() > MOST_REACHABLE
                ? Optional.empty()
                : Optional.of(all.stream().mapToLong(Long::longValue).toArray());
    }

    private static long max(Setting[] settings) {
        return Arrays.stream(settings).mapToLong(Setting::micros).max().orElseThrow();
    }

    private static long greatestCommonDivisor(long a, long b) {
        return b == 0 ? a : greatestCommonDivisor(b, a % b);
    }
}
