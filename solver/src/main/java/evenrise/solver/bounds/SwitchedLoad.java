package evenrise.solver.bounds;

import evenrise.model.project.Role;

/**
 * A switched load as the bounds see it.
 *
 * @param baseAmps of one pole
 * @param excessAmps of one pole
 * @param runningAmps of one pole
 * @param halfLife which of the project's half-lives its excess has
 * @param firstSeconds no board can switch it on before
 * @param before indexes of the loads that it comes after
 */
record SwitchedLoad(
        Role role,
        int poles,
        double baseAmps,
        double excessAmps,
        double runningAmps,
        int halfLife,
        double settleSeconds,
        double firstSeconds,
        int[] before) {
    double peakAmps() {
        return baseAmps + excessAmps;
    }
}
