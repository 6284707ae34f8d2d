package evenrise.model.measured;

import evenrise.model.project.Load;
import evenrise.model.project.MeasuredValue;
import java.util.Optional;

/**
 * What a current of a load is expected to be: what was measured of it before, else what is stated.
 *
 * @param amps rms
 * @param spreadAmps how far it may be off by itself, without the meter
 * @param since when it was measured, where it was
 */
record Expectation(double amps, double spreadAmps, Optional<MeasuredValue> since) {
    /** Twice the 12 % by which idle currents spread about what is stated (common practice, no source). */
    static final double MODEL_SPREAD = 0.24;

    static Expectation idle(Load load) {
        return of(load, MeasuredValue.IDLE, load.idleAmps());
    }

    /** At full design use: less is no difference. */
    static Expectation running(Load load) {
        return of(load, MeasuredValue.RUNNING, load.runningAmps());
    }

    private static Expectation of(Load load, String field, double stated) {
        // The last entry is the latest visit.
        return load.measured().stream()
                .filter(each -> each.field().equals(field))
                .reduce((earlier, later) -> later)
                .map(each -> new Expectation(each.value(), each.spread(), Optional.of(each)))
                .orElseGet(() -> new Expectation(stated, MODEL_SPREAD * stated, Optional.empty()));
    }

    boolean isDrift() {
        return since.isPresent();
    }
}
