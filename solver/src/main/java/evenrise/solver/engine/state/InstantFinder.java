package evenrise.solver.engine.state;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.LongStream;

/** Finds the switch-on instants that the boards' settings can give. */
final class InstantFinder {
    private static final int MOST_REACHABLE = 1 << 16;
    /** Sums that are tried for the instants alone; where there are more, instants soon are too many. */
    private static final int MOST_SUMS = 1 << 22;
    /** Bits that are moved, where instants are told as bits. */
    private static final long MOST_BITS = 1L << 34;

    private final CompiledProject compiled;

    InstantFinder(CompiledProject compiled) {
        this.compiled = compiled;
    }

    /** The instants that all settings give; empty where these are too many to keep. */
    Optional<Instants> find() {
        long grid = finestMicros();
        long latest = latestMicros();
        return Instants.fitGrid(grid, latest)
                ? Optional.of(Instants.grid(grid, latest))
                : reachable().map(Instants::of);
    }

    /** A grid that no setting keeps to. */
    Instants rounded() {
        long latest = latestMicros();
        return Instants.grid(latest / (MOST_REACHABLE - 1) + 1, latest);
    }

    /** The longest interval that every setting is a multiple of. */
    long finestMicros() {
        long grid = 0;
        for (int board = 0; board < compiled.boardCount; board++) {
            if (compiled.times[board] != null) {
                grid = commonInterval(grid, compiled.times[board]);
            } else {
                grid = commonInterval(commonInterval(grid, compiled.startDelays[board]), compiled.steps[board]);
            }
        }
        return Math.max(1, grid);
    }

    /** How many of those intervals a grid takes together to be one that is kept. */
    long fewestIntervals() {
        long finest = finestMicros();
        return latestMicros() / (finest * MOST_REACHABLE) + 1;
    }

    static long commonInterval(long interval, Setting[] settings) {
        long common = interval;
        for (Setting setting : settings) {
            common = greatestCommonDivisor(common, setting.micros());
        }
        return common;
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
        long finest = finestMicros();
        long bits = latestMicros() / finest + 1;
        long sums = 0;
        for (int board = 0; board < compiled.boardCount; board++) {
            sums += offsets(board).count();
        }
        return bits < Integer.MAX_VALUE && bits * sums < MOST_BITS ? asBits(finest) : oneByOne();
    }

    /** Where many settings share an interval: a bit for each multiple of it, shifted by what a board adds. */
    private Optional<long[]> asBits(long finest) {
        BigInteger all = BigInteger.ONE;
        List<BigInteger> ends = new ArrayList<>(Collections.nCopies(compiled.boardCount, BigInteger.ONE));
        for (int board : compiled.boardOrder) {
            BigInteger starts =
                    compiled.after[board] == CompiledProject.NONE ? BigInteger.ONE : ends.get(compiled.after[board]);
            BigInteger end = offsets(board)
                    .mapToObj(offset -> starts.shiftLeft((int) (offset / finest)))
                    .reduce(starts, BigInteger::or); // a board without a used output hands its own start on
            ends.set(board, end);
            all = all.or(end);
        }
        BigInteger reached = all;
        return reached.bitCount() > MOST_REACHABLE
                ? Optional.empty()
                : Optional.of(IntStream.range(0, reached.bitLength())
                        .filter(reached::testBit)
                        .mapToLong(at -> at * finest)
                        .toArray());
    }

    private Optional<long[]> oneByOne() {
        Set<Long> all = new HashSet<>(Set.of(0L));
        List<Set<Long>> ends = new ArrayList<>(Collections.nCopies(compiled.boardCount, Set.of()));
        long sums = 0;
        for (int board : compiled.boardOrder) {
            Set<Long> starts =
                    compiled.after[board] == CompiledProject.NONE ? Set.of(0L) : ends.get(compiled.after[board]);
            long[] offsets = offsets(board).toArray();
            Set<Long> end = new HashSet<>(starts);
            for (long start : starts) {
                for (long offset : offsets) {
                    end.add(start + offset);
                }
                sums += offsets.length;
                if (end.size() > MOST_REACHABLE || sums > MOST_SUMS) {
                    return Optional.empty();
                }
            }
            ends.set(board, end);
            all.addAll(end);
        }
        return all.size() > MOST_REACHABLE
                ? Optional.empty()
                : Optional.of(all.stream().mapToLong(Long::longValue).sorted().toArray());
    }

    /** When outputs of a board come on, from its start, whatever it is set to. */
    private LongStream offsets(int board) {
        if (compiled.times[board] != null) {
            return Arrays.stream(compiled.times[board]).mapToLong(Setting::micros);
        }
        return Arrays.stream(compiled.startDelays[board])
                .flatMapToLong(delay -> Arrays.stream(compiled.steps[board])
                        .flatMapToLong(step -> LongStream.range(0, compiled.outputCount(board))
                                .map(k -> delay.micros() + k * step.micros())))
                .distinct();
    }

    private static long max(Setting[] settings) {
        return Arrays.stream(settings).mapToLong(Setting::micros).max().orElseThrow();
    }

    private static long greatestCommonDivisor(long a, long b) {
        return b == 0 ? a : greatestCommonDivisor(b, a % b);
    }
}
