package evenrise.solver.engine.state;

import java.util.Arrays;

/**
 * Who is on when, by role, of the loads of one system: enough to tell at any moment whether processing comes first and amplifiers last, without
 * looking at every load. Counts by instant, with the first and last instant in use kept by the way.
 */
public final class RoleOrder {
    private final CompiledProject compiled;
    private final long[] settleClasses;
    private final int[] settleClassOf;
    private final InstantCounts[] settling;
    private final InstantCounts processing;
    private final InstantCounts auxiliary;
    private final InstantCounts amplifiers;
    private final InstantCounts all;
    /** Systems whose processing these loads wait for, this one first; and those that wait for this one's. */
    private RoleOrder[] awaited = {this};

    private RoleOrder[] awaiting = {this};
    private long readyCubes;
    private int readyCount;

    RoleOrder(CompiledProject compiled) {
        this.compiled = compiled;
        int size = compiled.instants.size();
        settleClasses = java.util.stream.IntStream.range(0, compiled.loadCount())
                .filter(load -> compiled.role[load] == CompiledProject.PROCESSING)
                .mapToLong(load -> compiled.settleMicros[load])
                .distinct()
                .sorted()
                .toArray();
        settleClassOf = new int[compiled.loadCount()];
        Arrays.setAll(settleClassOf, load -> Arrays.binarySearch(settleClasses, compiled.settleMicros[load]));
        settling = new InstantCounts[settleClasses.length];
        Arrays.setAll(settling, i -> new InstantCounts(size));
        processing = new InstantCounts(size);
        auxiliary = new InstantCounts(size);
        amplifiers = new InstantCounts(size);
        all = new InstantCounts(size);
    }

    /** Waits for the processing of others, too. */
    void await(RoleOrder[] awaited, RoleOrder[] awaiting) {
        this.awaited = awaited;
        this.awaiting = awaiting;
    }

    void add(int load, int instant, int sign) {
        all.add(instant, sign);
        if (compiled.role[load] != CompiledProject.AMPLIFIER) {
            readyCubes += sign * readyCube(compiled, load, instant);
            readyCount += sign;
        }
        switch (compiled.role[load]) {
            case CompiledProject.PROCESSING -> {
                processing.add(instant, sign);
                settling[settleClassOf[load]].add(instant, sign);
            }
            case CompiledProject.AUXILIARY -> auxiliary.add(instant, sign);
            default -> amplifiers.add(instant, sign);
        }
    }

    /** Time of the last switch-on; 0 where nothing is switched. */
    long durationMicros() {
        return all.isEmpty() ? 0 : compiled.instants.micros(all.last());
    }

    /**
     * When processing has settled and auxiliary loads are on, as a cubic mean: it leans to the latest of them, and yet every
     * load that comes on earlier lowers it. 0 where no amplifier waits.
     */
    public double readySeconds() {
        return readyCount == 0 || amplifiers.isEmpty() ? 0 : readySeconds(readyCubes, readyCount);
    }

    /** What a load adds to the mean of {@link #readySeconds()} that it is part of. */
    public static long readyCube(CompiledProject compiled, int load, int instant) {
        long readyMillis = (compiled.instants.micros(instant) + compiled.settleMicros[load]) / 1000;
        return readyMillis * readyMillis * readyMillis;
    }

    public static double readySeconds(long cubes, int count) {
        return Math.cbrt((double) cubes / count) / 1000;
    }

    /** Time from which amplifiers may come on. */
    public long amplifiersMayStartMicros() {
        long ready = auxiliary.isEmpty() ? 0 : compiled.instants.micros(auxiliary.last());
        return Math.max(ready, processingSettledMicros());
    }

    /** Time from which auxiliary loads may come on. */
    public long auxiliaryMayStartMicros() {
        long start = 0;
        for (RoleOrder each : awaited) {
            start = Math.max(start, each.processing.isEmpty() ? 0 : compiled.instants.micros(each.processing.last()));
        }
        return start;
    }

    /** Whether a load's switch-on is what others of a later role wait for, or comes before what it must wait for. */
    boolean isTooLateOrTooEarly(int load, int instant) {
        long on = compiled.instants.micros(instant);
        return switch (compiled.role[load]) {
            case CompiledProject.PROCESSING -> holdsUp(on, on + compiled.settleMicros[load]);
            case CompiledProject.AUXILIARY ->
                on < auxiliaryMayStartMicros()
                        || (!amplifiers.isEmpty() && on > compiled.instants.micros(amplifiers.first()));
            default -> on < amplifiersMayStartMicros();
        };
    }

    private boolean holdsUp(long on, long settled) {
        for (RoleOrder each : awaiting) {
            boolean early = !each.auxiliary.isEmpty() && on > compiled.instants.micros(each.auxiliary.first())
                    || !each.amplifiers.isEmpty() && settled > compiled.instants.micros(each.amplifiers.first());
            if (early) {
                return true;
            }
        }
        return false;
    }

    /** Charge for every auxiliary load or amplifier that comes on too early. */
    long lateness() {
        long charge = early(auxiliary, auxiliaryMayStartMicros());
        charge += early(amplifiers, processingSettledMicros());
        if (!auxiliary.isEmpty()) {
            charge += early(amplifiers, compiled.instants.micros(auxiliary.last()));
        }
        return charge;
    }

    private long processingSettledMicros() {
        long settled = 0;
        for (RoleOrder each : awaited) {
            settled = Math.max(settled, each.ownProcessingSettledMicros());
        }
        return settled;
    }

    private long ownProcessingSettledMicros() {
        long settled = 0;
        for (int i = 0; i < settling.length; i++) {
            if (!settling[i].isEmpty()) {
                settled = Math.max(settled, compiled.instants.micros(settling[i].last()) + settleClasses[i]);
            }
        }
        return settled;
    }

    private long early(InstantCounts tally, long mayStart) {
        long charge = 0;
        if (!tally.isEmpty()) {
            for (int i = tally.first(); i < compiled.instants.size(); i++) {
                long early = mayStart - compiled.instants.micros(i);
                if (early <= Charges.TIME_TOLERANCE_MICROS) {
                    break;
                }
                charge += tally.count(i) * Charges.late(early);
            }
        }
        return charge;
    }
}
