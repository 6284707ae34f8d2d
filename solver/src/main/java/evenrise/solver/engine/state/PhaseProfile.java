package evenrise.solver.engine.state;

/**
 * Current on one phase of a node over the instants. A load draws its base from its switch-on to the end, so the instants
 * are cut into blocks: in its own block a load is added instant by instant, and all later blocks stand on its base as a
 * whole. So a change touches a block or two, however many instants there are.
 */
final class PhaseProfile {
    private static final int SMALLEST_SHIFT = 4;

    /** Binary logarithm of a block's length: there are about as many blocks as instants in each. */
    private final int shift;
    /** Current at each instant, over what its block stands on. */
    private final int[] above;
    /** What comes on in each block and goes on in all that follow. */
    private final int[] handedOn;
    /** What each block stands on; true after {@link #refresh}. */
    private final int[] standsOn;
    /** Highest current in each block, over what it stands on; true where the block is not stale. */
    private final int[] highest;

    private final boolean[] isStale;
    private int peakUnits;

    PhaseProfile(CompiledProject compiled) {
        int size = compiled.instants.size();
        int wanted = (Integer.SIZE - Integer.numberOfLeadingZeros(size)) / 2;
        shift = Math.max(SMALLEST_SHIFT, wanted);
        above = new int[size];
        int blocks = (size - 1 >> shift) + 1;
        handedOn = new int[blocks];
        standsOn = new int[blocks];
        highest = new int[blocks];
        isStale = new boolean[blocks];
    }

    /** Adds ({@code sign} 1) or takes away (−1) a load that comes on at instant {@code from}. */
    void add(EnvelopeRows envelopes, int load, int from, int sign) {
        addBase(envelopes, load, from, sign);
        int last = envelopes.addExcess(load, above, from, sign) - 1;
        for (int block = (from >> shift) + 1; block <= last >> shift; block++) {
            isStale[block] = true;
        }
    }

    /** The same without what it draws ever after. */
    void addExcess(EnvelopeRows envelopes, int load, int from, int sign) {
        add(envelopes, load, from, sign);
        addBase(envelopes, load, from, -sign);
    }

    /** Adds ({@code sign} 1) or takes away (−1) what a load draws at {@code from} and ever after. */
    private void addBase(EnvelopeRows envelopes, int load, int from, int sign) {
        int base = sign * envelopes.baseUnits[load];
        int block = from >> shift;
        int end = Math.min(above.length, block + 1 << shift);
        for (int t = from; t < end; t++) {
            above[t] += base;
        }
        handedOn[block] += base;
        isStale[block] = true;
    }

    /** Brings peak and blocks up to date. */
    void refresh() {
        int base = 0;
        int peak = 0;
        for (int block = 0; block < highest.length; block++) {
            if (isStale[block]) {
                isStale[block] = false;
                highest[block] = highestIn(block);
            }
            standsOn[block] = base;
            peak = Math.max(peak, base + highest[block]);
            base += handedOn[block];
        }
        peakUnits = peak;
    }

    private int highestIn(int block) {
        int end = Math.min(above.length, block + 1 << shift);
        int max = 0;
        for (int t = block << shift; t < end; t++) {
            max = Math.max(max, above[t]);
        }
        return max;
    }

    /** Greatest current, at the last refresh. */
    int peakUnits() {
        return peakUnits;
    }

    /** Current at an instant, at the last refresh. */
    int units(int instant) {
        return standsOn[instant >> shift] + above[instant];
    }

    /** First instant of the peak at which something comes on; 0 where nothing does. */
    int peakInstant(InstantIndex index) {
        for (int block = 0; block < highest.length; block++) {
            if (standsOn[block] + highest[block] == peakUnits) {
                int end = Math.min(above.length, block + 1 << shift);
                for (int t = block << shift; t < end; t++) {
                    if (units(t) == peakUnits && index.count(t) > 0) {
                        return t;
                    }
                }
            }
        }
        return 0;
    }
}
