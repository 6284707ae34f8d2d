package evenrise.solver.engine;

/** Current of one node over the instants, phase by phase, kept up to date load by load. */
final class InrushProfile {
    private final Plant plant;
    private final InstantIndex index;
    private final int[][] units;
    private final int[] peaks;
    private int peakUnits;
    private int peakPhase;
    private boolean stale = true;

    InrushProfile(Plant plant, InstantIndex index) {
        this.plant = plant;
        this.index = index;
        units = new int[plant.phaseCount][plant.instants.size()];
        peaks = new int[plant.phaseCount];
    }

    /** Adds or takes away a load that comes on at instant {@code from}; an unswitched load draws its base from the first. */
    void add(int load, int phaseMask, int from, int sign) {
        stale = true;
        for (int phase = 0; phase < units.length; phase++) {
            if ((phaseMask >> phase & 1) != 0) {
                plant.envelopes.add(load, units[phase], from, sign);
            }
        }
    }

    /** Adds or takes away a load that draws its base always. */
    void addBase(int load, int phaseMask, int sign) {
        stale = true;
        for (int phase = 0; phase < units.length; phase++) {
            if ((phaseMask >> phase & 1) != 0) {
                plant.envelopes.addBase(load, units[phase], sign);
            }
        }
    }

    /** Greatest current on one phase. */
    int peakUnits(int phase) {
        peakUnits();
        return peaks[phase];
    }

    /** Greatest current on any phase. */
    int peakUnits() {
        if (stale) {
            stale = false;
            peakUnits = -1;
            for (int phase = 0; phase < units.length; phase++) {
                int top = max(units[phase]);
                peaks[phase] = top;
                if (top > peakUnits) {
                    peakUnits = top;
                    peakPhase = phase;
                }
            }
        }
        return peakUnits;
    }

    /** Phase of the peak; the first of equals. */
    int peakPhase() {
        peakUnits();
        return peakPhase;
    }

    /** First instant of the peak on its phase. */
    int peakInstant() {
        int[] profile = units[peakPhase()];
        int first = profile.length;
        for (int i = 0; i < index.usedCount(); i++) {
            int instant = index.used(i);
            if (profile[instant] == peakUnits && instant < first) {
                first = instant;
            }
        }
        return first == profile.length ? 0 : first;
    }

    int units(int phase, int instant) {
        return units[phase][instant];
    }

    /**
     * The profile's norm, in units: never below the peak, and little above it. Unlike the peak it falls with every high
     * instant that is lowered.
     *
     * @param doublings binary logarithm of its order
     */
    double norm(int doublings) {
        double scale = 1.0 / Math.max(1, peakUnits());
        double sum = 0;
        for (int[] profile : units) {
            sum += powerSum(profile, scale, doublings);
        }
        return sum == 0 ? peakUnits : Math.max(peakUnits, Math.pow(sum, 1.0 / (1 << doublings)) / scale);
    }

    /** Two at a time, so that the processor need not wait for one product before it begins the other. */
    private double powerSum(int[] profile, double scale, int doublings) {
        double even = 0;
        double odd = 0;
        int count = index.usedCount();
        for (int i = 1; i < count; i += 2) {
            even += power(profile[index.used(i - 1)] * scale, doublings);
            odd += power(profile[index.used(i)] * scale, doublings);
        }
        return (count & 1) == 1 ? even + odd + power(profile[index.used(count - 1)] * scale, doublings) : even + odd;
    }

    private static double power(double value, int doublings) {
        double power = value;
        for (int d = 0; d < doublings; d++) {
            power *= power;
        }
        return power;
    }

    /** Sum of the fourth powers of all currents: the lower, the flatter the profile, also far from its peak. */
    double unevenness() {
        double sum = 0;
        for (int[] profile : units) {
            for (int i = 0; i < index.usedCount(); i++) {
                double square = (double) profile[index.used(i)] * profile[index.used(i)];
                sum += square * square;
            }
        }
        return sum;
    }

    /** Currents only fall between switch-ons, so only these are looked at; the first instant stands for what is always on. */
    private int max(int[] profile) {
        int max = index.usedCount() == 0 ? profile[0] : 0;
        for (int i = 0; i < index.usedCount(); i++) {
            max = Math.max(max, profile[index.used(i)]);
        }
        return max;
    }
}
