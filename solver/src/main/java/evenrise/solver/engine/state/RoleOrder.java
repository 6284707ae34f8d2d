package evenrise.solver.engine.state;

import java.util.Arrays;

/**
 * Who is on when, by role: enough to tell at any moment whether processing comes first and amplifiers last, without
 * looking at every load. Counts by instant, with the first and last instant in use kept by the way.
 */
public final class RoleOrder {
    private final Plant plant;
    private final long[] settleClasses;
    private final int[] settleClassOf;
    private final Tally[] settling;
    private final Tally processing;
    private final Tally auxiliary;
    private final Tally amplifiers;
    private final Tally all;
    private long readyCubes;
    private int readyCount;

    RoleOrder(Plant plant) {
        this.plant = plant;
        int size = plant.instants.size();
        settleClasses = java.util.stream.IntStream.range(0, plant.loadCount())
                .filter(load -> plant.role[load] == Plant.PROCESSING)
                .mapToLong(load -> plant.settleMicros[load])
                .distinct()
                .sorted()
                .toArray();
        settleClassOf = new int[plant.loadCount()];
        Arrays.setAll(settleClassOf, load -> Arrays.binarySearch(settleClasses, plant.settleMicros[load]));
        settling = new Tally[settleClasses.length];
        Arrays.setAll(settling, i -> new Tally(size));
        processing = new Tally(size);
        auxiliary = new Tally(size);
        amplifiers = new Tally(size);
        all = new Tally(size);
    }

    void add(int load, int instant, int sign) {
        all.add(instant, sign);
        if (plant.role[load] != Plant.AMPLIFIER) {
            long readyMillis = (plant.instants.micros(instant) + plant.settleMicros[load]) / 1000;
            readyCubes += sign * readyMillis * readyMillis * readyMillis;
            readyCount += sign;
        }
        switch (plant.role[load]) {
            case Plant.PROCESSING -> {
                processing.add(instant, sign);
                settling[settleClassOf[load]].add(instant, sign);
            }
            case Plant.AUXILIARY -> auxiliary.add(instant, sign);
            default -> amplifiers.add(instant, sign);
        }
    }

    /** Time of the last switch-on; 0 where nothing is switched. */
    long durationMicros() {
        return all.isEmpty() ? 0 : plant.instants.micros(all.last());
    }

    /**
     * When processing has settled and auxiliary loads are on, as a cubic mean: it leans to the latest of them, and yet every
     * load that comes on earlier lowers it. 0 where no amplifier waits.
     */
    public double readySeconds() {
        return readyCount == 0 || amplifiers.isEmpty() ? 0 : Math.cbrt((double) readyCubes / readyCount) / 1000;
    }

    /** Time from which amplifiers may come on. */
    public long amplifiersMayStartMicros() {
        long ready = auxiliary.isEmpty() ? 0 : plant.instants.micros(auxiliary.last());
        return Math.max(ready, processingSettledMicros());
    }

    /** Time from which auxiliary loads may come on. */
    public long auxiliaryMayStartMicros() {
        return processing.isEmpty() ? 0 : plant.instants.micros(processing.last());
    }

    /** Whether a load's switch-on is what others of a later role wait for, or comes before what it must wait for. */
    public boolean isTooLateOrTooEarly(int load, int instant) {
        long on = plant.instants.micros(instant);
        return switch (plant.role[load]) {
            case Plant.PROCESSING ->
                (!auxiliary.isEmpty() && on > plant.instants.micros(auxiliary.first()))
                        || (!amplifiers.isEmpty()
                                && on + plant.settleMicros[load] > plant.instants.micros(amplifiers.first()));
            case Plant.AUXILIARY ->
                on < auxiliaryMayStartMicros()
                        || (!amplifiers.isEmpty() && on > plant.instants.micros(amplifiers.first()));
            default -> on < amplifiersMayStartMicros();
        };
    }

    /** Charge for every auxiliary load or amplifier that comes on too early, and for a sequence that takes too long. */
    public long lateness() {
        long charge = early(auxiliary, auxiliaryMayStartMicros());
        charge += early(amplifiers, processingSettledMicros());
        if (!auxiliary.isEmpty()) {
            charge += early(amplifiers, plant.instants.micros(auxiliary.last()));
        }
        long limit = plant.limits.durationMicros;
        return limit == Long.MAX_VALUE ? charge : charge + Charges.late(durationMicros() - limit);
    }

    private long processingSettledMicros() {
        long settled = 0;
        for (int i = 0; i < settling.length; i++) {
            if (!settling[i].isEmpty()) {
                settled = Math.max(settled, plant.instants.micros(settling[i].last()) + settleClasses[i]);
            }
        }
        return settled;
    }

    private long early(Tally tally, long mayStart) {
        long charge = 0;
        if (!tally.isEmpty()) {
            for (int i = tally.first(); i < plant.instants.size(); i++) {
                long early = mayStart - plant.instants.micros(i);
                if (early <= Charges.TIME_TOLERANCE_MICROS) {
                    break;
                }
                charge += tally.count(i) * Charges.late(early);
            }
        }
        return charge;
    }
}
