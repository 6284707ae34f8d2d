package evenrise.solver.bounds;

/**
 * The unit in which peaks come: where no load has a base and every excess is gone within a step, a peak is a sum of inrush
 * peaks, so a multiple of their greatest common divisor.
 */
final class WholeUnits {
    private static final double MICROS = 1e6;

    /** What may be left of all excesses together. */
    private static final double GONE_AMPS = 1e-9;

    private WholeUnits() {}

    /** 0 where there is no such unit. */
    static double amps(BoundedProject subject) {
        TimeGrid grid = subject.grid;
        if (!grid.exact() || subject.standingAmps > 0) {
            return 0;
        }
        double decaying = Math.max(0, grid.stepSeconds() - 2 * subject.toleranceSeconds);
        double left = 0;
        long unit = 0;
        for (SwitchedLoad load : subject.loads) {
            double micros = load.excessAmps() * MICROS;
            if (load.baseAmps() > 0 || Math.abs(micros - Math.rint(micros)) > 1e-3) {
                return 0;
            }
            left += load.excessAmps() * Math.pow(2, -decaying / subject.halfLifeSeconds[load.halfLife()]);
            unit = gcd(unit, Math.round(micros));
        }
        return grid.count() > 1 && left > GONE_AMPS ? 0 : unit / MICROS;
    }

    private static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }
}
