package evenrise.solver.exhaustive;

import evenrise.model.project.Load;

/**
 * A load as the trees see it.
 *
 * @param index in the project's order
 * @param load as the project has it
 * @param baseAmps crest of its idle current, of each pole
 * @param excessAmps what its inrush is above that
 * @param phaseSets sets of phases that some slot gives it, as bits, rising; never empty
 * @param settleMicros from its coming on until it has settled
 * @param group index of its shutdown group; -1 where it has none
 * @param drops whether it drops on an emergency
 * @param alike the first load that nothing tells apart from it, which may be itself
 * @param alikeInTime the first that nothing tells apart but its currents and where it sits
 */
record SmallLoad(
        int index,
        Load load,
        double baseAmps,
        double excessAmps,
        int[] phaseSets,
        long settleMicros,
        int group,
        boolean drops,
        int alike,
        int alikeInTime) {

    boolean switched() {
        return load.switched();
    }

    /** Of its excess, what is left so long after its time to come on, with tolerance on both sides of both instants. */
    double leftAmps(long sinceMicros, double toleranceMicros) {
        double decaying = sinceMicros - 2 * toleranceMicros;
        return decaying <= 0 ? excessAmps : excessAmps * Math.pow(2, -decaying / halfMicros());
    }

    /** From its time to come on until no more than {@code amps} of its excess is left. */
    double ringsMicros(double amps, double toleranceMicros) {
        return excessAmps <= amps
                ? Double.NEGATIVE_INFINITY
                : 2 * toleranceMicros + halfMicros() * Math.log(excessAmps / amps) / Math.log(2);
    }

    private double halfMicros() {
        return load.inrushHalfMillis() * Micros.PER_MILLISECOND;
    }
}
