package evenrise.solver.document;

import evenrise.model.rules.Layout;
import evenrise.solver.report.NodeUse;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;

/**
 * Currents of one place against its limits.
 *
 * @param running of the fullest line
 * @param peak while the sequence runs, of the greatest phase
 */
public record PlaceLoading(String place, Bullet running, Bullet peak) {

    /** The tightest first, by whichever of the two is tighter. */
    static List<PlaceLoading> of(Layout layout) {
        return NodeUse.of(layout).stream()
                .map(PlaceLoading::of)
                .sorted(Comparator.comparingDouble(PlaceLoading::usedPercent).reversed())
                .toList();
    }

    private static PlaceLoading of(NodeUse use) {
        return new PlaceLoading(
                use.node(),
                new Bullet(Collections.max(use.runningAmps().values()), use.runningLimitAmps(), "A"),
                new Bullet(use.greatestPeakAmps(), use.inrushLimitAmps().orElse(0), "A"));
    }

    private double usedPercent() {
        return Math.max(running.usedPercent(), peak.usedPercent());
    }
}
