package evenrise.solver.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Lists of one workbook that are alternates, below each other. */
public final class AlternateListsText {
    private AlternateListsText() {}

    /** @param texts of each list, by its name */
    public static List<String> lines(Map<String, List<String>> texts, Paint paint) {
        List<List<String>> sections = new ArrayList<>();
        texts.forEach((name, lines) -> {
            sections.add(new Section(paint, "Alternate: " + name).lines());
            sections.add(lines);
        });
        return Sections.joined(sections);
    }
}
