package evenrise.solver.report;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.rules.PeakShare;
import evenrise.model.rules.Verdict;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What one load adds to the supply's peak, at that peak's instant and phase.
 *
 * @param amps instantaneous, by the upper-bound envelope; {@code baseAmps} and {@code excessAmps} together
 * @param onSeconds its nominal switch-on; empty for an unswitched load
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
    static List<PeakContribution> of(Project project, Plan plan, Verdict verdict) {
        Map<String, Load> loads =
                project.loads().stream().collect(Collectors.toMap(Load::id, Function.identity(), (a, b) -> a));
        Map<String, Assignment> places = plan.assignments().stream()
                .collect(Collectors.toMap(Assignment::load, Function.identity(), (a, b) -> a));
        double peak = verdict.metrics().peakInrushAmps();
        return verdict.peakShares().stream()
                .filter(share -> loads.containsKey(share.load()))
                .map(share -> of(loads.get(share.load()), places.get(share.load()), share, peak))
                .toList();
    }

    private static PeakContribution of(Load load, Assignment place, PeakShare share, double peak) {
        return new PeakContribution(
                load.id(),
                load.name(),
                load.role(),
                place == null ? OptionalDouble.empty() : place.onSeconds(),
                share.amps(),
                share.baseAmps(),
                share.amps() - share.baseAmps(),
                peak == 0 ? 0 : 100 * share.amps() / peak);
    }
}
