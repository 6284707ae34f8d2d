package evenrise.solver.app;

import evenrise.solver.report.AlternateListsText;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The sheets of a workbook, each a project of its own: alternates are not added up.
 *
 * @since 0.1.0
 */
public final class ImportAlternatesResult implements Listing {
    private final Map<String, ImportResult> sheets;
    private final List<String> written;
    private final Optional<String> refusal;

    ImportAlternatesResult(Map<String, ImportResult> sheets, List<String> written, Optional<String> refusal) {
        this.sheets = new LinkedHashMap<>(sheets);
        this.written = List.copyOf(written);
        this.refusal = refusal;
    }

    /** What came of each sheet, by its name. */
    public Map<String, ImportResult> sheets() {
        return Map.copyOf(sheets);
    }

    /** Project files in the folder, one for each sheet, in their order; none where one could not be made. */
    public List<String> written() {
        return written;
    }

    /** Why nothing is written; empty where all are. */
    public Optional<String> refusal() {
        return refusal;
    }

    @Override
    public List<String> text(TextStyle style) {
        Map<String, List<String>> texts = new LinkedHashMap<>();
        sheets.forEach((sheet, result) -> texts.put(sheet, result.text(style)));
        return AlternateListsText.lines(texts, style.paint());
    }
}
