package evenrise.model.check;

import evenrise.model.project.Board;
import evenrise.model.project.Load;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;

/** What feeds a board exists and is always on. */
final class ControlSupplies {
    private ControlSupplies() {}

    static void check(ProjectParts parts, Consumer<Objection> found) {
        if (!parts.knows("/nodes") || !parts.knows("/panels") || !parts.knows("/loads")) {
            return;
        }
        for (int i = 0; i < parts.project.boards().size(); i++) {
            Board board = parts.project.boards().get(i);
            String at = "/boards/" + i + "/fed_by";
            board.fedBy().ifPresent(id -> one(parts, id, at, found));
        }
    }

    private static void one(ProjectParts parts, String id, String at, Consumer<Objection> found) {
        if (id.equals(ProjectParts.SUPPLY) || parts.panels.containsKey(id) || parts.nodes.containsKey(id)) {
            return;
        }
        Load load = parts.loads.get(id);
        if (load == null) {
            Set<String> known = new TreeSet<>(parts.loads.keySet());
            known.addAll(parts.panels.keySet());
            known.addAll(parts.nodes.keySet());
            String cure = Nearest.cure(id, known, "Maybe it was renamed or removed.");
            found.accept(Objection.error(at, Shown.quoted(id), "the id of a panel, a node or a load", cure));
        } else if (load.switched()) {
            found.accept(Objection.error(
                    at,
                    Shown.quoted(id) + ", which is switched",
                    "a load that is not switched: a board cannot wait for another to feed it",
                    "Maybe feed the board by a load of its own that is always on."));
        }
    }
}
