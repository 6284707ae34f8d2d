package evenrise.solver.app;

import evenrise.model.answer.LoadAnswer;
import evenrise.model.file.Json;
import evenrise.model.rules.Layout;
import evenrise.solver.report.ExplanationFile;
import evenrise.solver.report.ExplanationText;
import java.util.List;

/**
 * Every other place of a load, judged.
 *
 * @since 0.1.0
 */
public record ExplainResult(Layout layout, LoadAnswer answer) implements Listing {
    @Override
    public List<String> text(TextStyle style) {
        return ExplanationText.lines(answer, style.isFull(), style.paint());
    }

    /** All of it, as its own schema says. */
    public String json() {
        return Json.of(ExplanationFile.of(layout, answer));
    }
}
