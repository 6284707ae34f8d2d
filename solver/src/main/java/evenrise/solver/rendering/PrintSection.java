package evenrise.solver.rendering;

import java.util.List;
import java.util.Map;

/**
 * One section of the printed sheets. It is laid out part by part, for a renderer needs memory for all that it lays out at
 * once.
 *
 * @param parts each begins on a page of its own
 */
record PrintSection(String title, String template, List<Part> parts) {
    /**
     * @param mark under which a reader finds it in the outline; empty for none
     * @param values for the template
     */
    record Part(String mark, Map<String, Object> values) {}
}
