package evenrise.solver.document;

import evenrise.model.contract.Phrase;
import evenrise.model.project.Phase;
import evenrise.solver.report.PeakContribution;
import java.util.Optional;

/**
 * One load's part of a node's peak, or that of all that are not listed.
 *
 * @param load empty for the rest
 * @param others how many loads the rest is; 0 for a load
 */
public record PeakPart(
        String node,
        Phase phase,
        Optional<PeakContribution> load,
        int others,
        double amps,
        double baseAmps,
        double sharePercent) {
    static PeakPart of(String node, Phase phase, PeakContribution it) {
        return new PeakPart(node, phase, Optional.of(it), 0, it.amps(), it.baseAmps(), it.sharePercent());
    }

    String what() {
        return load.map(PeakContribution::load).orElse(Phrase.counted(others, "other"));
    }
}
