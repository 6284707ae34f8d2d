package evenrise.solver.compare;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The sound findings that no other beats at once in price, peak and time. */
public final class Front {
    private static final double SAME = 1e-9;

    private Front() {}

    /** By price, then by peak; of equal ones the first. */
    public static List<Finding> of(List<Finding> findings) {
        List<Finding> sound = findings.stream()
                .filter(Finding::isSound)
                .sorted(Comparator.comparingDouble(
                                (Finding each) -> each.scenario().price())
                        .thenComparingDouble(each -> each.metrics().peakInrushAmps())
                        .thenComparingDouble(each -> each.metrics().durationSeconds()))
                .toList();
        List<Finding> front = new java.util.ArrayList<>();
        for (Finding each : sound) {
            boolean isBeaten = sound.stream().anyMatch(other -> other != each && beats(other, each))
                    || front.stream().anyMatch(other -> equal(other, each));
            if (!isBeaten) {
                front.add(each);
            }
        }
        return front;
    }

    /** The cheapest sound finding; of several the one with the lowest peak. */
    public static Optional<Finding> cheapest(List<Finding> findings) {
        return of(findings).stream().findFirst();
    }

    private static boolean beats(Finding a, Finding b) {
        boolean isNoWorse = a.scenario().price() <= b.scenario().price() + SAME
                && a.metrics().peakInrushAmps() <= b.metrics().peakInrushAmps() + SAME
                && a.metrics().durationSeconds() <= b.metrics().durationSeconds() + SAME;
        boolean isBetter = a.scenario().price() < b.scenario().price() - SAME
                || a.metrics().peakInrushAmps() < b.metrics().peakInrushAmps() - SAME
                || a.metrics().durationSeconds() < b.metrics().durationSeconds() - SAME;
        return isNoWorse && isBetter;
    }

    private static boolean equal(Finding a, Finding b) {
        return Math.abs(a.scenario().price() - b.scenario().price()) <= SAME
                && Math.abs(a.metrics().peakInrushAmps() - b.metrics().peakInrushAmps()) <= SAME
                && Math.abs(a.metrics().durationSeconds() - b.metrics().durationSeconds()) <= SAME;
    }
}
