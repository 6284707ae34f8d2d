package evenrise.model.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
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
        List<String> broken = new ArrayList<>();
        layout.clocks().ends().forEach((system, duration) -> {
            if (longest.isPresent() && duration > longest.getAsDouble() + Tolerances.SECONDS) {
                broken.add(message(layout, system, duration, longest));
            }
        });
        return broken;
    }

    private static String message(Layout layout, Optional<String> system, double duration, OptionalDouble longest) {
        Placement last = layout.placements().stream()
                .filter(each -> each.board().isPresent()
                        && (system.isEmpty() || each.load().system().equals(system)))
                .max(Comparator.comparingDouble(Placement::on))
                .orElseThrow();
        String whose = system.map(id -> " of system " + Say.quoted(id)).orElse("");
        return "the sequence" + whose + " takes " + Say.seconds(duration, longest.getAsDouble()) + ", allowed are "
                + Say.seconds(longest.getAsDouble(), duration) + "; load " + Say.quoted(last.id()) + " on board "
                + Say.quoted(Say.boardOf(last)) + " comes on last."
                + " Maybe shorten that board's step or start delay, or let more boards run in parallel.";
    }
}
