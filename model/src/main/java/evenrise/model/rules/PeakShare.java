package evenrise.model.rules;

import evenrise.model.electrical.InrushEnvelope;
import java.util.Comparator;
import java.util.List;

/**
 * What one load adds to a peak.
 *
 * @param load id of the load
 * @param amps instantaneous current at the peak's instant, by the envelope at nominal voltage
 * @param baseAmps the part of it that stays
 */
public record PeakShare(String load, double amps, double baseAmps) {

    /** What makes a node's peak, largest first: of the placements that it feeds, those that draw on the phase then. */
    public static List<PeakShare> of(PhasePeak peak, List<Placement> fed, double toleranceSeconds) {
        double instantSeconds = peak.atSeconds() - toleranceSeconds;
        return fed.stream()
                .filter(each -> each.phases().contains(peak.phase()))
                .map(each -> of(each, instantSeconds, toleranceSeconds))
                .filter(share -> share.amps() > 0)
                .sorted(Comparator.comparingDouble(PeakShare::amps).reversed())
                .toList();
    }

    private static PeakShare of(Placement placement, double instantSeconds, double toleranceSeconds) {
        InrushEnvelope envelope = InrushEnvelope.of(placement.load(), toleranceSeconds);
        double amps = placement.isSequenced() ? envelope.amps(placement.on(), instantSeconds) : envelope.baseAmps();
        return new PeakShare(placement.id(), amps, envelope.baseAmps());
    }
}
