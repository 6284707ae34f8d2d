package evenrise.solver.engine;

/** Current of one node over the instants, phase by phase, kept up to date load by load. */
final class InrushProfile {
    /** Order of the norm, as a number of squarings: 2⁶ = 64. */
    private static final int DOUBLINGS = Integer.getInteger("dbl", 6);

    private final Plant plant;
    private final int[][] units;
    private int peakUnits;
    private int peakPhase;
    private int seenUntil = -1;

    InrushProfile(Plant plant) {
        this.plant = plant;
        units = new int[plant.phaseCount][plant.instants.size()];
    }

    /** Adds or takes away a load that comes on at instant {@code from}; an unswitched load draws its base from the first. */
    void add(int load, int phaseMask, int from, int sign) {
        seenUntil = -1;
        for (int phase = 0; phase < units.length; phase++) {
            if ((phaseMask >> phase & 1) != 0) {
                plant.envelopes.add(load, units[phase], from, sign);
            }
        }
    }

    /**
     * Greatest current on any phase.
     *
     * @param last the last instant at which anything comes on; behind it every current only falls
     */
    int peakUnits(int last) {
        if (seenUntil != last) {
            seenUntil = last;
            peakUnits = -1;
            for (int phase = 0; phase < units.length; phase++) {
                int top = max(units[phase], last);
                if (top > peakUnits) {
                    peakUnits = top;
                    peakPhase = phase;
                }
            }
        }
        return peakUnits;
    }

    /** Phase of the peak that was asked for last; the first of equals. */
    int peakPhase() {
        return peakPhase;
    }

    /** First instant of the peak that was asked for last, on its phase. */
    int peakInstant() {
        int[] profile = units[peakPhase];
        int instant = 0;
        while (profile[instant] != peakUnits) {
            instant++;
        }
        return instant;
    }

    int units(int phase, int instant) {
        return units[phase][instant];
    }

    /**
     * The profile's norm of order 64, in units: never below the peak, and little above it. Unlike the peak it falls with
     * every high instant that is lowered.
     */
    double norm(int last) {
        double scale = 1.0 / Math.max(1, peakUnits(last));
        double sum = 0;
        for (int[] profile : units) {
            sum += powerSum(profile, last, scale);
        }
        return Math.pow(sum, 1.0 / (1 << DOUBLINGS)) / scale;
    }

    /** Two at a time, so that the processor need not wait for one product before it begins the other. */
    private static double powerSum(int[] profile, int last, double scale) {
        double even = 0;
        double odd = 0;
        int i = 0;
        for (; i < last; i += 2) {
            even += power(profile[i] * scale);
            odd += power(profile[i + 1] * scale);
        }
        return i == last ? even + odd + power(profile[last] * scale) : even + odd;
    }

    private static double power(double value) {
        double power = value;
        for (int d = 0; d < DOUBLINGS; d++) {
            power *= power;
        }
        return power;
    }

    /** Sum of the fourth powers of all currents: the lower, the flatter the profile, also far from its peak. */
    double unevenness() {
        double sum = 0;
        for (int[] profile : units) {
            for (int value : profile) {
                double square = (double) value * value;
                sum += square * square;
            }
        }
        return sum;
    }

    private static int max(int[] values, int last) {
        int max = 0;
        for (int i = 0; i <= last; i++) {
            max = Math.max(max, values[i]);
        }
        return max;
    }
}
