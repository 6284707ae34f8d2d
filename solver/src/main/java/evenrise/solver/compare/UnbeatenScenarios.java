package evenrise.solver.compare;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The sound findings that no other beats at once in price, peak and time. */
public final class UnbeatenScenarios {
    private static final double SAME = 1e-9;

    private UnbeatenScenarios() {}

    /** By price, then by peak; of equal ones the first. */
    public static List<ScenarioResult> of(List<ScenarioResult> findings) {
        List<ScenarioResult> sound = findings.stream()
                .filter(ScenarioResult::isSound)
                .sorted(Comparator.comparingDouble(
                                (ScenarioResult each) -> each.scenario().price())
                        .thenComparingDouble(each -> each.metrics().peakInrushAmps())
                        .thenComparingDouble(each -> each.metrics().durationSeconds()))
                .toList();
        List<ScenarioResult> front = new java.util.ArrayList<>();
        for (ScenarioResult each : sound) {
            boolean isBeaten = sound.stream().anyMatch(other -> other != each && beats(other, each))
                    || front.stream().anyMatch(other -> equal(other, each));
            if (!isBeaten) {
                front.add(each);
            }
        }
        return front;
    }

    /** The cheapest sound finding; of several the one with the lowest peak. */
    public static Optional<ScenarioResult> cheapest(List<ScenarioResult> findings) {
        return of(findings).stream().findFirst();
    }

    private static boolean beats(ScenarioResult a, ScenarioResult b) {
        boolean isNoWorse = a.scenario().price() <= b.scenario().price() + SAME
                && a.metrics().peakInrushAmps() <= b.metrics().peakInrushAmps() + SAME
                && a.metrics().durationSeconds() <= b.metrics().durationSeconds() + SAME;
        boolean isBetter = a.scenario().price() < b.scenario().price() - SAME
                || a.metrics().peakInrushAmps() < b.metrics().peakInrushAmps() - SAME
                || a.metrics().durationSeconds() < b.metrics().durationSeconds() - SAME;
        return isNoWorse && isBetter;
    }

    private static boolean equal(ScenarioResult a, ScenarioResult b) {
        return Math.abs(a.scenario().price() - b.scenario().price()) <= SAME
                && Math.abs(a.metrics().peakInrushAmps() - b.metrics().peakInrushAmps()) <= SAME
                && Math.abs(a.metrics().durationSeconds() - b.metrics().durationSeconds()) <= SAME;
    }
}
