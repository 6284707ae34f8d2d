package evenrise.solver.app;

/**
 * Where one more load could go in a plan.
 *
 * @param amps running current
 * @since 0.1.0
 */
public record NextLoadRequest(Source project, Source plan, double amps, int poles) {
    public NextLoadRequest {
        if (!(amps >= 0) || amps > 99_999.9999) {
            throw new IllegalArgumentException("amps is " + amps + ", expected 0 to 99,999.9999");
        }
        if (poles < 1 || poles > 3) {
            throw new IllegalArgumentException("poles is " + poles + ", expected 1 to 3");
        }
    }
}
