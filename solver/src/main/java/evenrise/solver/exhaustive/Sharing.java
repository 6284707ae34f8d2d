package evenrise.solver.exhaustive;

/**
 * Who shares a phase with whom.
 *
 * @param phaseSets of each load, as bits, in the project's order
 * @param peakAmps what the supply's peak does not stay below, whoever comes on when
 * @param deviationsAmps what deviations of running currents cost by their weights, in ampere-equivalents; of a project with
 *     several panels what they cost at least
 * @param leastAmps what peak and deviations do not stay below together, by their weights
 */
record Sharing(int[] phaseSets, double peakAmps, double deviationsAmps, double leastAmps) {
    /** The loads on a phase, as bits. */
    long on(int phase) {
        long loads = 0;
        for (int load = 0; load < phaseSets.length; load++) {
            loads |= (long) (phaseSets[load] >> phase & 1) << load;
        }
        return loads;
    }
}
