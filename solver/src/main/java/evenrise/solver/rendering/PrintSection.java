package evenrise.solver.rendering;

import java.util.List;
import java.util.Map;

/**
 * One section of the printed sheets. It is laid out part by part, for a renderer needs memory for all that it lays out at
 * once.
 *
 * @param parts each begins on a page of its own
 * @param form of its pages
 */
record PrintSection(String title, String template, List<Part> parts, Form form) {
    /** How a page lies. */
    enum Form {
        UPRIGHT,
        ACROSS,
        /** Across, twice as large: A3, 11 by 17 inches. */
        DRAWING
    }

    /** Upright. */
    PrintSection(String title, String template, List<Part> parts) {
        this(title, template, parts, Form.UPRIGHT);
    }

    /**
     * @param mark under which a reader finds it in the outline; empty for none
     * @param values for the template
     */
    record Part(String mark, Map<String, Object> values) {}
}
