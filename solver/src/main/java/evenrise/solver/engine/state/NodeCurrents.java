package evenrise.solver.engine.state;

/** Running and neutral current of one node, kept up to date load by load. */
public final class NodeCurrents {
    private final CompiledProject compiled;
    private final long runningLimitNano;
    private final double neutralLimitNano;
    private final long[] runningNano;
    /** Phases that the node has; others carry nothing and count in no mean. */
    private final int had;

    private final int hadCount;
    private long neutralRealNano;
    private long neutralImaginaryNano;
    private long thirdNano;

    NodeCurrents(CompiledProject compiled, int node) {
        this.compiled = compiled;
        runningLimitNano = compiled.limits.runningNano[node];
        neutralLimitNano = compiled.limits.neutralNano[node];
        runningNano = new long[compiled.phaseCount];
        had = compiled.phasesOf[node];
        hadCount = Integer.bitCount(had);
    }

    void add(int load, int phaseMask, int sign) {
        Currents currents = compiled.currents;
        long running = sign * currents.runningNano[load];
        for (int phase = 0; phase < runningNano.length; phase++) {
            if ((phaseMask >> phase & 1) != 0) {
                runningNano[phase] += running;
                if (phaseMask == 1 << phase) {
                    int at = currents.neutralIndex(load, phase);
                    neutralRealNano += sign * currents.neutralNano[at];
                    neutralImaginaryNano += sign * currents.neutralNano[at + 1];
                    thirdNano += sign * currents.neutralNano[at + 2];
                }
            }
        }
    }

    public long runningNano(int phase) {
        return runningNano[phase];
    }

    /** Largest distance of a phase from the mean. */
    long deviationNano() {
        long total = 0;
        for (long current : runningNano) {
            total += current;
        }
        long largest = 0;
        for (int phase = 0; phase < runningNano.length; phase++) {
            if ((had >> phase & 1) != 0) {
                largest = Math.max(largest, Math.abs(runningNano[phase] * hadCount - total));
            }
        }
        return largest / hadCount;
    }

    /** Mean of the phases. */
    public double meanNano() {
        double total = 0;
        for (long current : runningNano) {
            total += current;
        }
        return total / hadCount;
    }

    /** Charge for current over the rating and over the neutral's, in milliamperes. */
    long overload() {
        long over = 0;
        for (long current : runningNano) {
            over += Charges.overMilliAmps(current - runningLimitNano);
        }
        double square = (double) neutralRealNano * neutralRealNano
                + (double) neutralImaginaryNano * neutralImaginaryNano
                + (double) thirdNano * thirdNano;
        return square <= neutralLimitNano * neutralLimitNano
                ? over
                : over + Charges.overMilliAmps(Math.sqrt(square) - neutralLimitNano);
    }
}
