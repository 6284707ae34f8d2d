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

    private final Plant plant;

    InstantFinder(Plant plant) {
        this.plant = plant;
    }

    Instants find() {
        long grid = 0;
        for (Setting setting : plant.settings) {
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
        long[] end = new long[plant.boardCount];
        for (int board : plant.boardOrder) {
            long start = plant.after[board] == Plant.NONE ? 0 : end[plant.after[board]];
            long last = plant.outputCount(board) - 1L;
            end[board] = start + max(plant.startDelays[board]) + last * max(plant.steps[board]);
            latest = Math.max(latest, end[board]);
        }
        return latest;
    }

    /** The reachable instants, sorted; empty where they are too many to keep. */
    private Optional<long[]> reachable() {
        Set<Long> all = new TreeSet<>(Set.of(0L));
        List<Set<Long>> ends = new ArrayList<>(Collections.nCopies(plant.boardCount, Set.of()));
        for (int board : plant.boardOrder) {
            Set<Long> starts = plant.after[board] == Plant.NONE ? Set.of(0L) : ends.get(plant.after[board]);
            Set<Long> end = new TreeSet<>(starts); // a board without a used output hands its own start on
            for (long start : starts) {
                for (Setting delay : plant.startDelays[board]) {
                    for (Setting step : plant.steps[board]) {
                        for (int k = 0; k < plant.outputCount(board); k++) {
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
