package evenrise.solver.report;

import evenrise.model.event.StepKind;
import evenrise.model.event.Trace;
import evenrise.model.event.TraceStep;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The steps of a rehearsal, one a row. */
final class RehearsalSteps {
    private static final int MOST_STEPS = 60;

    private RehearsalSteps() {}

    /** @param all whether every breaker has a row of its own */
    static List<String> lines(Trace trace, boolean all, Paint paint) {
        Table table = new Table()
                .number("At, s")
                .words("Step")
                .text("What")
                .number("On")
                .words("Shown");
        List<TraceStep> steps = all ? trace.steps() : summed(trace.steps());
        int shown = Math.min(steps.size(), all ? Integer.MAX_VALUE : MOST_STEPS);
        for (TraceStep step : steps.subList(0, shown)) {
            table.row(
                    step.kind() == StepKind.FAILS ? Tone.BAD : Tone.PLAIN,
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
    private static List<TraceStep> summed(List<TraceStep> steps) {
        List<TraceStep> kept = new ArrayList<>();
        Map<String, List<TraceStep>> failures = new HashMap<>();
        for (TraceStep step : steps) {
            if (step.kind() == StepKind.FAILS) {
                List<TraceStep> alike =
                        failures.computeIfAbsent(step.atSeconds() + step.text(), any -> new ArrayList<>());
                alike.add(step);
                if (alike.size() == 1) {
                    kept.add(step);
                }
            } else if (step.kind() != StepKind.CLOSES && step.kind() != StepKind.OPENS) {
                kept.add(step);
            }
        }
        return kept.stream()
                .map(step -> step.kind() == StepKind.FAILS
                        ? inOne(
                                step,
                                failures.get(step.atSeconds() + step.text()).size())
                        : step)
                .toList();
    }

    private static TraceStep inOne(TraceStep first, int count) {
        return count == 1
                ? first
                : new TraceStep(
                        first.atSeconds(),
                        first.kind(),
                        first.load().map(id -> id + " and " + (count - 1) + " more"),
                        first.text(),
                        first.loadsOn(),
                        first.shown(),
                        first.locked());
    }

    private static String word(StepKind kind) {
        return switch (kind) {
            case GOES_DOWN -> "goes down";
            default -> kind.name().toLowerCase(Locale.ROOT);
        };
    }
}
