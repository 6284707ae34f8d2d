package evenrise.model.rules;

import evenrise.model.project.Phase;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;

/**
 * What one node carries as one command is carried out. Where systems have clocks of their own, what that command does not
 * switch is at its worst throughout: in use, or, where any system may start at any time, at the greater of that and of its
 * own start. The node's peak is the greatest of {@code peakAmps} and {@code usedAmps} over its starts.
 *
 * @param system whose command; empty where one command switches all
 * @param restAmps instantaneous, by phase, what that command does not switch; 0 where there is one command, which unswitched
 *     loads then belong to
 * @param peaks by phase, with the rest
 * @param usedAmps crest by phase once it is on and in use, with the rest; 0 where there is one command
 */
public record NodeStart(
        Optional<String> system,
        Map<Phase, Double> restAmps,
        Map<Phase, PhasePeak> peaks,
        Map<Phase, Double> usedAmps) {

    /** Greatest over the phases, starting or in use. */
    public double mostAmps() {
        return Math.max(
                peaks.values().stream().mapToDouble(PhasePeak::amps).max().orElse(0),
                usedAmps.values().stream()
                        .mapToDouble(Double::doubleValue)
                        .max()
                        .orElse(0));
    }

    /** Peak of the phase that carries most, starting or in use. */
    public PhasePeak worst() {
        return peaks.values().stream()
                .max(Comparator.comparingDouble(peak -> Math.max(peak.amps(), usedAmps.get(peak.phase()))))
                .orElseThrow();
    }
}
