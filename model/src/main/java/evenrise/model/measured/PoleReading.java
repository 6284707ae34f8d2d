package evenrise.model.measured;

import evenrise.model.project.Phase;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What was read of one pole of a load, or of all of them alike.
 *
 * @param phase that was read; empty where the sheet does not say
 * @param idleAmps rms, right after power-up
 * @param runningAmps rms, in use
 * @param peakAmps instantaneous, at switch-on
 * @param onSeconds from the command to switch on
 * @param offSeconds from the command to switch off
 * @param passed what the sheet says in the end
 * @param remark whatever else somebody wrote
 */
public record PoleReading(
        String load,
        Optional<Phase> phase,
        OptionalDouble idleAmps,
        OptionalDouble runningAmps,
        OptionalDouble peakAmps,
        OptionalDouble onSeconds,
        OptionalDouble offSeconds,
        Optional<Boolean> passed,
        Optional<String> remark,
        Visit visit) {
    /** Whether it has a current. */
    public boolean hasCurrent() {
        return idleAmps.isPresent() || runningAmps.isPresent() || peakAmps.isPresent();
    }
}
