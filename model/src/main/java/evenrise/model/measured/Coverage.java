package evenrise.model.measured;

import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * How much of what a plan lets flow at idle was measured, load by load or with its whole panel.
 *
 * @param loads that were read themselves
 * @param ofLoads that the plan has
 * @param amps of what was measured, over all poles
 * @param ofAmps of all
 * @param missing loads that nothing was read of, the greatest first
 * @param withoutTests panels of which no voltage, rotation or insulation was written down
 */
public record Coverage(
        int loads, int ofLoads, double amps, double ofAmps, List<String> missing, List<String> withoutTests) {
    /** From so much of it on a plant counts as measured (common practice, no source). */
    static final double ENOUGH = 0.9;

    static Coverage of(Layout layout, SiteReadings readings) {
        Set<String> read = readings.poles().stream()
                .filter(PoleReading::hasCurrent)
                .map(PoleReading::load)
                .collect(Collectors.toSet());
        int loads = 0;
        double amps = 0;
        double all = 0;
        List<Placement> missing = new ArrayList<>();
        for (Placement each : layout.placements()) {
            double own = each.load().idleAmps() * each.load().poles();
            boolean isRead = read.contains(each.id());
            boolean isInTotals = each.panel()
                    .filter(panel -> hasTotals(readings, layout.distribution().of(panel)))
                    .isPresent();
            loads += isRead ? 1 : 0;
            all += own;
            amps += isRead || isInTotals ? own : 0;
            if (!isRead && !isInTotals) {
                missing.add(each);
            }
        }
        missing.sort(Comparator.comparingDouble((Placement each) -> -each.load().idleAmps())
                .thenComparing(Placement::id));
        List<String> untested = layout.project().panels().stream()
                .map(panel -> panel.id())
                .filter(id -> readings.places().stream()
                        .noneMatch(each -> each.place().equals(id) && isTest(each)))
                .toList();
        return new Coverage(
                loads,
                layout.placements().size(),
                amps,
                all,
                missing.stream().map(Placement::id).toList(),
                untested);
    }

    private static boolean isTest(PlaceReading each) {
        return !each.volts().isEmpty()
                || each.isRotationRight().isPresent()
                || each.insulationMegohms().isPresent();
    }

    /** Of all of its phases. */
    private static boolean hasTotals(SiteReadings readings, Point point) {
        Set<Phase> phases = Set.copyOf(point.system().phases());
        return readings.places().stream()
                .anyMatch(each -> each.place().equals(point.id())
                        && each.idleAmps().keySet().containsAll(phases));
    }

    public double part() {
        return ofAmps > 0 ? amps / ofAmps : 0;
    }

    public boolean isEnough() {
        return part() >= ENOUGH;
    }
}
