package evenrise.model.measured;

import evenrise.model.project.Load;
import evenrise.model.project.MeasuredValue;
import java.util.List;

/**
 * Why a reading is other than expected, as far as figures tell.
 *
 * @param isFault whether something is amiss, rather than a plate that states too much
 */
record LikelyCause(String words, String lookAt, boolean isFault) {
    /** A reading below so much of what is expected is none. */
    private static final double NOTHING = 0.1;

    /** Ratios are told within so much of them. */
    private static final double NEAR = 0.06;

    private static final String PLATE = "the gear's plate, and what else is on its circuit";

    static LikelyCause ofIdle(
            Load load, Expectation expected, double amps, List<PoleReading> readings, PoleReading reading) {
        double ratio = expected.amps() > 0 ? amps / expected.amps() : Double.POSITIVE_INFINITY;
        if (ratio < NOTHING) {
            boolean othersDraw = readings.stream()
                    .filter(each -> each != reading && !each.phase().equals(reading.phase()))
                    .anyMatch(each -> each.idleAmps().orElse(0) >= NOTHING * expected.amps());
            return othersDraw
                    ? new LikelyCause(
                            "one pole is dead while others carry current",
                            "that pole of its breaker, its lead and its terminal; isolate first",
                            true)
                    : new LikelyCause(
                            "it does not draw", "its breaker, its output, the gear's own switch, the clamp", true);
        }
        if (isNear(ratio, 10) || isNear(ratio, 0.1)) {
            return new LikelyCause("a factor of ten", "the meter's range, or a slip of the decimal mark", true);
        }
        if (isNear(ratio, 2)) {
            return new LikelyCause(
                    "twice as much", "whether a second unit hangs on the circuit; turns in the clamp", true);
        }
        if (isNear(ratio, 0.5)) {
            return new LikelyCause("half as much", "whether part of the gear is off or not connected", true);
        }
        if (expected.isDrift()) {
            return new LikelyCause(
                    "it has changed since " + LoadCurrents.since(expected), "what was changed on its circuit", true);
        }
        return new LikelyCause(plate(load, MeasuredValue.IDLE), PLATE, false);
    }

    /** What the field rests on. */
    static String plate(Load load, String field) {
        if (load.guessed().contains(field)) {
            return "its " + field + " was guessed";
        }
        boolean isDerived =
                field.equals(MeasuredValue.PEAK) && load.inrushPeakAmps().isEmpty();
        return isDerived ? "no inrush is stated of it" : "its " + field + " as stated is not what it draws";
    }

    private static boolean isNear(double ratio, double to) {
        return Math.abs(ratio / to - 1) < NEAR;
    }
}
