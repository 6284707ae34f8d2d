package evenrise.solver.engine.fine;

import java.util.SplittableRandom;

/** Which load is to change: half of the time any, else of four the one that comes on where its phases carry most. */
final class HotLoads {
    static final int TRIES = 4;

    private HotLoads() {}

    static int draw(FinePlan plan, int[] from, SplittableRandom random) {
        int load = from[random.nextInt(from.length)];
        if (random.nextInt(2) == 0) {
            return load;
        }
        double highest = units(plan, load);
        for (int i = 1; i < TRIES; i++) {
            int other = from[random.nextInt(from.length)];
            double units = units(plan, other);
            if (units > highest) {
                highest = units;
                load = other;
            }
        }
        return load;
    }

    private static double units(FinePlan plan, int load) {
        return plan.instantOf[load] < 0
                ? 0
                : plan.profile.highest(plan.placeOf[load].phaseMask(), plan.instantOf[load]);
    }
}
