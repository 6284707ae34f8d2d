package evenrise.solver.report;

import java.util.ArrayList;
import java.util.List;

/** Puts the sections of a report under each other. */
final class Sections {
    private Sections() {}

    /** All lines, an empty one between two sections. */
    static List<String> joined(List<List<String>> sections) {
        List<String> lines = new ArrayList<>();
        for (List<String> section : sections) {
            if (!lines.isEmpty()) {
                lines.add("");
            }
            lines.addAll(section);
        }
        return lines;
    }
}
