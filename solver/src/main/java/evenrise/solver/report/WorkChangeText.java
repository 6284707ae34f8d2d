package evenrise.solver.report;

import evenrise.model.plan.Assignment;
import evenrise.solver.rework.Changes;
import evenrise.solver.rework.LoadChange;
import evenrise.solver.rework.Removal;
import evenrise.solver.rework.SettingChange;
import evenrise.solver.rework.TimeChange;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Single changes of a rework, each in a line: what goes from where to where. */
public final class WorkChangeText {
    private WorkChangeText() {}

    /** In the order in which they are numbered: loads, settings, times, removals. */
    public static List<String> of(Changes changes) {
        List<String> all = new ArrayList<>();
        changes.loads().stream().map(WorkChangeText::load).forEach(all::add);
        changes.settings().stream().map(WorkChangeText::setting).forEach(all::add);
        changes.times().stream().map(WorkChangeText::time).forEach(all::add);
        changes.removals().stream().map(WorkChangeText::removal).forEach(all::add);
        return all;
    }

    private static String load(LoadChange change) {
        List<String> parts = new ArrayList<>();
        if (change.isReTerminated()) {
            parts.add(change.from().map(seat -> slot(seat) + " to ").orElse("new breaker in ") + slot(change.to()));
        }
        if (change.isReLanded()) {
            Optional<String> from = change.from().flatMap(WorkChangeText::output);
            Optional<String> to = output(change.to());
            parts.add(
                    to.isEmpty()
                            ? "lead off " + from.orElse("its output")
                            : from.equals(to)
                                    ? "lead drawn anew on " + to.get()
                                    : "lead "
                                            + from.map(it -> "from " + it + " ").orElse("") + "to " + to.get());
        }
        return change.load() + ": " + String.join("; ", parts);
    }

    private static String slot(Assignment seat) {
        return WorkStepText.slot(seat.panel(), seat.slot());
    }

    private static Optional<String> output(Assignment seat) {
        return seat.board()
                .map(board -> WorkStepText.output(board, seat.output().orElse(0)));
    }

    private static String setting(SettingChange change) {
        return "board " + change.board() + ": start delay "
                + Numbers.seconds(change.to().delaySeconds()) + " s, step "
                + Numbers.seconds(change.to().betweenSeconds()) + " s";
    }

    private static String time(TimeChange change) {
        return change.load() + ": " + WorkStepText.output(change.board(), change.output()) + " at "
                + Numbers.seconds(change.seconds()) + " s";
    }

    private static String removal(Removal removal) {
        return removal.load() + ": gone, out of " + slot(removal.from());
    }
}
