package evenrise.solver.app;

import evenrise.model.file.Json;
import evenrise.model.sizing.Sizes;
import evenrise.solver.report.SizesFile;
import evenrise.solver.report.SizesText;
import java.util.List;
import java.util.Optional;

/**
 * Proposals that a person takes over or not; nothing was written.
 *
 * @param place that alone is told
 * @since 0.1.0
 */
public record SizeResult(Sizes sizes, Optional<String> place) implements Listing {
    @Override
    public List<String> text(TextStyle style) {
        return SizesText.lines(sizes, place, style.isFull(), style.paint());
    }

    /** All of it, as its own schema says. */
    public String json() {
        return Json.of(SizesFile.of(sizes, place));
    }
}
