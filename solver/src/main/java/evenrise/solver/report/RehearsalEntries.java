package evenrise.solver.report;

import evenrise.model.event.EntryKind;
import evenrise.model.event.Trace;
import evenrise.model.event.TraceEntry;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The steps of a rehearsal, one a row. */
final class RehearsalEntries {
    private static final int MOST_STEPS = 60;

    private RehearsalEntries() {}

    /** @param all whether every breaker has a row of its own */
    static List<String> lines(Trace trace, boolean all, Paint paint) {
        Table table = new Table()
                .number("At, s")
                .words("Step")
                .text("What")
                .number("On")
                .words("Shown");
        List<TraceEntry> steps = all ? trace.steps() : summed(trace.steps());
        int shown = Math.min(steps.size(), all ? Integer.MAX_VALUE : MOST_STEPS);
        for (TraceEntry step : steps.subList(0, shown)) {
            table.row(
                    step.kind() == EntryKind.FAILS ? Tone.BAD : Tone.PLAIN,
                    Numbers.seconds(step.atSeconds()),
                    word(step.kind()),
                    step.load()
                                    .map(id -> "load " + id + (step.text().isEmpty() ? "" : ": "))
                                    .orElse("")
                            + step.text(),
                    Integer.toString(step.loadsOn()),
                    step.shown().words() + (step.locked() ? ", locked" : ""));
        }
        Section section = new Section(paint, all ? "Every step" : "Steps, without single breakers (--all shows them)")
                .table(table);
        return (shown < steps.size() ? section.text("And " + (steps.size() - shown) + " more.") : section).lines();
    }

    /** Without what went right; breakers that fail in the same way at one time in one row. */
    private static List<TraceEntry> summed(List<TraceEntry> steps) {
        List<TraceEntry> kept = new ArrayList<>();
        Map<String, List<TraceEntry>> failures = new HashMap<>();
        for (TraceEntry step : steps) {
            if (step.kind() == EntryKind.FAILS) {
                List<TraceEntry> alike =
                        failures.computeIfAbsent(step.atSeconds() + step.text(), any -> new ArrayList<>());
                alike.add(step);
                if (alike.size() == 1) {
                    kept.add(step);
                }
            } else if (step.kind() != EntryKind.CLOSES && step.kind() != EntryKind.OPENS) {
                kept.add(step);
            }
        }
        return kept.stream()
                .map(step -> step.kind() == EntryKind.FAILS
                        ? inOne(
                                step,
                                failures.get(step.atSeconds() + step.text()).size())
                        : step)
                .toList();
    }

    private static TraceEntry inOne(TraceEntry first, int count) {
        return count == 1
                ? first
                : new TraceEntry(
                        first.atSeconds(),
                        first.kind(),
                        first.load().map(id -> id + " and " + (count - 1) + " more"),
                        first.text(),
                        first.loadsOn(),
                        first.shown(),
                        first.locked());
    }

    private static String word(EntryKind kind) {
        return switch (kind) {
            case GOES_DOWN -> "goes down";
            default -> kind.name().toLowerCase(Locale.ROOT);
        };
    }
}
