package evenrise.solver.engine.fine;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.InstantCounts;
import evenrise.solver.engine.state.RoleOrder;

/** Whether processing comes first and amplifiers last, and how long amplifiers wait, kept up to date load by load. */
final class FineOrder {
    private final CompiledProject compiled;
    private final InstantCounts processing;
    private final InstantCounts settled;
    private final InstantCounts auxiliary;
    private final InstantCounts amplifiers;
    private final int[] settleInstants;
    private long readyCubes;
    private int readyCount;

    FineOrder(CompiledProject compiled, int size) {
        this.compiled = compiled;
        settleInstants = new int[compiled.loadCount()];
        int longest = 0;
        for (int load = 0; load < settleInstants.length; load++) {
            settleInstants[load] = compiled.instants.countUntil(compiled.settleMicros[load]);
            longest = Math.max(longest, settleInstants[load]);
        }
        processing = new InstantCounts(size);
        settled = new InstantCounts(size + longest);
        auxiliary = new InstantCounts(size);
        amplifiers = new InstantCounts(size);
    }

    void add(int load, int instant, int sign) {
        switch (compiled.role[load]) {
            case CompiledProject.PROCESSING -> {
                processing.add(instant, sign);
                settled.add(instant + settleInstants[load], sign);
            }
            case CompiledProject.AUXILIARY -> auxiliary.add(instant, sign);
            default -> amplifiers.add(instant, sign);
        }
        if (compiled.role[load] != CompiledProject.AMPLIFIER) {
            readyCubes += sign * RoleOrder.readyCube(compiled, load, instant);
            readyCount += sign;
        }
    }

    boolean isKept() {
        int firstAmplifier = amplifiers.isEmpty() ? Integer.MAX_VALUE : amplifiers.first();
        int firstAuxiliary = auxiliary.isEmpty() ? Integer.MAX_VALUE : auxiliary.first();
        boolean waits = auxiliary.isEmpty() || auxiliary.last() <= firstAmplifier;
        return waits
                && (processing.isEmpty()
                        || processing.last() <= Math.min(firstAuxiliary, firstAmplifier)
                                && settled.last() <= firstAmplifier);
    }

    /** As {@link RoleOrder#readySeconds()} has it. */
    double readySeconds() {
        return readyCount == 0 || amplifiers.isEmpty() ? 0 : RoleOrder.readySeconds(readyCubes, readyCount);
    }
}
