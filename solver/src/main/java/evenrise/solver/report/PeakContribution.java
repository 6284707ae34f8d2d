package evenrise.solver.report;

import evenrise.model.project.Role;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PeakShare;
import evenrise.model.rules.Placement;
import evenrise.model.rules.Verdict;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What one load adds to the supply's peak, at that peak's instant and phase.
 *
 * @param onSeconds its nominal switch-on; empty for an unswitched load and for one that has no output
 * @param amps instantaneous, by the envelope at nominal voltage; {@code baseAmps} and {@code excessAmps} together
 * @param sharePercent of the peak
 */
public record PeakContribution(
        String load,
        String name,
        Role role,
        OptionalDouble onSeconds,
        double amps,
        double baseAmps,
        double excessAmps,
        double sharePercent) {

    /** Largest first. */
    static List<PeakContribution> of(Layout layout, Verdict verdict) {
        return verdict.peakShares().stream()
                .map(share -> of(
                        layout.placement(share.load()).orElseThrow(),
                        share,
                        verdict.metrics().peakInrushAmps()))
                .toList();
    }

    public static PeakContribution of(Placement placement, PeakShare share, double peakAmps) {
        return new PeakContribution(
                share.load(),
                placement.load().name(),
                placement.load().role(),
                placement.onSeconds(),
                share.amps(),
                share.baseAmps(),
                share.amps() - share.baseAmps(),
                peakAmps == 0 ? 0 : 100 * share.amps() / peakAmps);
    }
}
