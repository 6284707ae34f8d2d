package evenrise.solver.report;

import evenrise.model.contract.Harmless;
import java.util.ArrayList;
import java.util.List;

/** Lines of a report under one heading. */
final class Section {
    private final Paint paint;
    private final List<String> lines = new ArrayList<>();

    Section(Paint paint, String heading) {
        this.paint = paint;
        lines.add(paint.on(Tone.HEADING, Harmless.shown(heading)));
    }

    /** Running text, indented. */
    Section text(String text) {
        return text(Tone.PLAIN, text);
    }

    Section text(Tone tone, String text) {
        Wrap.lines("  ", text).forEach(line -> lines.add(paint.on(tone, line)));
        return this;
    }

    /** One entry of a list. */
    Section item(String text) {
        lines.addAll(Wrap.lines("  - ", text));
        return this;
    }

    Section table(Table table) {
        table.lines(paint).forEach(lines::add);
        return this;
    }

    List<String> lines() {
        return List.copyOf(lines);
    }
}
