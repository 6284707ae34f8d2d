package evenrise.solver.rendering;

import io.pebbletemplates.pebble.extension.AbstractExtension;
import io.pebbletemplates.pebble.extension.Filter;
import io.pebbletemplates.pebble.template.EvaluationContext;
import io.pebbletemplates.pebble.template.PebbleTemplate;
import java.util.List;
import java.util.Map;

/** {@code plain} in a template: a name from a file without what could act on its surroundings. */
final class PlainFilter extends AbstractExtension implements Filter {
    @Override
    public Map<String, Filter> getFilters() {
        return Map.of("plain", this);
    }

    @Override
    public List<String> getArgumentNames() {
        return List.of();
    }

    @Override
    public Object apply(
            Object input, Map<String, Object> values, PebbleTemplate self, EvaluationContext context, int line) {
        return Cells.text(String.valueOf(input));
    }
}
