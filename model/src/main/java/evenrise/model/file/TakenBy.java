package evenrise.model.file;

import evenrise.model.project.TakenDefault;
import java.util.ArrayList;
import java.util.List;

/** Who took one field of one default, as it is gathered. */
final class TakenBy {
    private final MeantLoads entry;
    final String field;
    private final Node value;
    final List<String> taken = new ArrayList<>();
    final List<String> stated = new ArrayList<>();
    final List<String> later = new ArrayList<>();
    final List<String> incomplete = new ArrayList<>();

    TakenBy(MeantLoads entry, String field, Node value) {
        this.entry = entry;
        this.field = field;
        this.value = value;
    }

    TakenDefault told() {
        return new TakenDefault(
                entry.index() + 1, entry.words(), field, shown(value), taken, stated, later, incomplete);
    }

    private static String shown(Node value) {
        if (value instanceof Node.Text text) {
            return text.text();
        }
        return value instanceof Node.Arr list
                ? String.join(", ", list.entries().stream().map(TakenBy::shown).toList())
                : value.shown();
    }
}
