package evenrise.solver.engine;

/** Running and neutral current of one node, kept up to date load by load. */
final class NodeCurrents {
    private final Plant plant;
    private final int node;
    private final long[] runningNano;
    private long neutralRealNano;
    private long neutralImaginaryNano;
    private long thirdNano;

    NodeCurrents(Plant plant, int node) {
        this.plant = plant;
        this.node = node;
        runningNano = new long[plant.phaseCount];
    }

    void add(int load, int phaseMask, int sign) {
        Currents currents = plant.currents;
        for (int phase = 0; phase < runningNano.length; phase++) {
            if ((phaseMask >> phase & 1) != 0) {
                runningNano[phase] += sign * currents.runningNano[load];
                neutralRealNano += sign * currents.neutralRealNano[load][phase];
                neutralImaginaryNano += sign * currents.neutralImaginaryNano[load][phase];
                thirdNano += sign * currents.thirdNano[load][phase];
            }
        }
    }

    long runningNano(int phase) {
        return runningNano[phase];
    }

    /** Largest distance of a phase from the mean. */
    long deviationNano() {
        long total = 0;
        for (long current : runningNano) {
            total += current;
        }
        long largest = 0;
        for (long current : runningNano) {
            largest = Math.max(largest, Math.abs(current * runningNano.length - total));
        }
        return largest / runningNano.length;
    }

    /** Mean of the phases. */
    double meanNano() {
        double total = 0;
        for (long current : runningNano) {
            total += current;
        }
        return total / runningNano.length;
    }

    /** Charge for current over the rating and over the neutral's, in milliamperes. */
    long overload() {
        long over = 0;
        for (long current : runningNano) {
            over += Charges.overMilliAmps(current - plant.limits.runningNano[node]);
        }
        double neutral = Math.hypot(Math.hypot(neutralRealNano, neutralImaginaryNano), thirdNano);
        return over + Charges.overMilliAmps(neutral - plant.limits.neutralNano[node]);
    }
}
