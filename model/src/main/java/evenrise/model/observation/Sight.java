package evenrise.model.observation;

import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What a recorder can see: where it was, whose command it saw, and how sharply.
 *
 * @param point index of the place in the layout's distribution
 * @param system whose command it is; empty where the plant has no systems
 * @param phases that were recorded
 * @param intervalSeconds between samples
 * @param sigmaSeconds standard deviation of a start's time
 */
record Sight(int point, Optional<String> system, Set<Phase> phases, double intervalSeconds, double sigmaSeconds) {
    /** Switches and their control come so much about their time (common practice, no source). */
    private static final double LEAST_TIME_SIGMA = 0.01;

    /** Part of a sample's interval that a step is off by. */
    private static final double OF_AN_INTERVAL = 0.6;

    static Sight of(Layout layout, int point, Optional<String> system, Recording recording) {
        double interval = recording.intervalSeconds();
        double sigma = Math.max(
                Math.max(OF_AN_INTERVAL * interval, LEAST_TIME_SIGMA),
                layout.project().timingToleranceSeconds());
        return new Sight(point, system, recording.amps().keySet(), interval, sigma);
    }

    /** What no two samples part is one start. */
    List<ExpectedStart> expected(Layout layout) {
        return ExpectedStart.of(layout, point, system, 2 * intervalSeconds);
    }

    /** Two starts at each other's time. */
    List<ExpectedStart> exchanged(Layout layout, ExpectedStart one, ExpectedStart other) {
        return ExpectedStart.exchanged(layout, point, system, one, other);
    }

    Likeness likeness() {
        return new Likeness(phases, sigmaSeconds);
    }
}
