package evenrise.solver.engine;

/** Current of one node over the instants, phase by phase, kept up to date load by load. */
final class InrushProfile {
    private final Plant plant;
    private final int[][] units;
    private int peakUnits;
    private int peakPhase;
    private boolean stale = true;

    InrushProfile(Plant plant) {
        this.plant = plant;
        units = new int[plant.phaseCount][plant.instants.size()];
    }

    /** Adds or takes away a load that comes on at instant {@code from}; an unswitched load draws its base always. */
    void add(int load, int phaseMask, int from, int sign) {
        stale = true;
        for (int phase = 0; phase < units.length; phase++) {
            if ((phaseMask >> phase & 1) != 0) {
                plant.envelopes.add(load, units[phase], from, sign);
            }
        }
    }

    int peakUnits() {
        refresh();
        return peakUnits;
    }

    /** Phase of the peak; the first of equals. */
    int peakPhase() {
        refresh();
        return peakPhase;
    }

    /** First instant of the peak on its phase. */
    int peakInstant() {
        refresh();
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
     * How crowded the profile is just below its peak: what stands above two heights near the peak, summed. A maximum is a
     * plateau for a search; this is the slope below it.
     */
    long crowding() {
        int peak = peakUnits();
        return above(peak - peak / 32) + 4 * above(peak - peak / 128);
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

    /**
     * The profile's norm of order 2^doublings, in units: never below the peak, and the closer to it the higher the order.
     * Unlike the peak it falls with every high instant that is lowered.
     */
    double norm(int doublings) {
        double scale = 1.0 / Math.max(1, peakUnits());
        double sum = 0;
        for (int[] profile : units) {
            sum += powerSum(profile, scale, doublings);
        }
        return Math.pow(sum, 1.0 / (1 << doublings)) / scale;
    }

    private static double powerSum(int[] profile, double scale, int doublings) {
        double even = 0;
        double odd = 0;
        int last = profile.length - 1;
        for (int i = 0; i < last; i += 2) {
            double a = profile[i] * scale;
            double b = profile[i + 1] * scale;
            for (int d = 0; d < doublings; d++) {
                a *= a;
                b *= b;
            }
            even += a;
            odd += b;
        }
        if ((profile.length & 1) == 1) {
            double a = profile[last] * scale;
            for (int d = 0; d < doublings; d++) {
                a *= a;
            }
            even += a;
        }
        return even + odd;
    }

    private long above(int height) {
        long sum = 0;
        for (int[] profile : units) {
            int phaseSum = 0;
            for (int value : profile) {
                phaseSum += Math.max(0, value - height);
            }
            sum += phaseSum;
        }
        return sum;
    }

    private void refresh() {
        if (stale) {
            stale = false;
            peakUnits = -1;
            for (int phase = 0; phase < units.length; phase++) {
                int top = max(units[phase]);
                if (top > peakUnits) {
                    peakUnits = top;
                    peakPhase = phase;
                }
            }
        }
    }

    private static int max(int[] values) {
        int max = 0;
        for (int value : values) {
            max = Math.max(max, value);
        }
        return max;
    }
}
