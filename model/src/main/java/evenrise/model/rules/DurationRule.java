package evenrise.model.rules;

import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;

/** The last load comes on no later than the project allows. */
final class DurationRule implements Rule {
    @Override
    public String id() {
        return "duration";
    }

    @Override
    public List<String> broken(Layout layout) {
        OptionalDouble longest = layout.project().maxDurationSeconds();
        double duration = layout.times().durationSeconds();
        if (longest.isEmpty() || duration <= longest.getAsDouble() + Tolerances.SECONDS) {
            return List.of();
        }
        Placement last = layout.placements().stream()
                .filter(Placement::isSequenced)
                .max(Comparator.comparingDouble(Placement::on))
                .orElseThrow();
        return List.of("the sequence takes " + Say.seconds(duration, longest.getAsDouble()) + ", allowed are "
                + Say.seconds(longest.getAsDouble(), duration) + "; load " + Say.quoted(last.id()) + " on board "
                + Say.quoted(Say.boardOf(last)) + " comes on last."
                + " Maybe shorten that board's step or start delay, or let more boards run in parallel.");
    }
}
