package evenrise.model.check;

import evenrise.model.contract.FormatVersion;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.Scene;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.project.SwitchedSystem;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Function;

/** The format is ours, and no two parts of a kind share an id. */
final class Identity {
    private Identity() {}

    static void check(ProjectParts parts, Consumer<Objection> found) {
        Project project = parts.project;
        if (!FormatVersion.isRead(project.format(), Project.FORMAT)) {
            found.accept(format(project.format(), Project.FORMAT));
        }
        unique("/panels", project.panels(), Panel::id, found);
        unique("/nodes", project.nodes(), DistributionNode::id, found);
        unique("/systems", project.systems(), SwitchedSystem::id, found);
        unique("/scenes", project.scenes(), Scene::id, found);
        unique("/board_types", project.boardTypes(), BoardType::id, found);
        unique("/boards", project.boards(), Board::id, found);
        unique("/shutdown_groups", project.shutdownGroups(), ShutdownGroup::id, found);
        unique("/loads", project.loads(), Load::id, found);
    }

    static Objection format(String format, String expected) {
        return Objection.error(
                "/format",
                Shown.quoted(format),
                Shown.quoted(expected),
                "Maybe the file is of another kind, or of a newer version.");
    }

    static <T> void unique(String list, List<T> parts, Function<T, String> id, Consumer<Objection> found) {
        Map<String, Integer> first = new HashMap<>();
        for (int i = 0; i < parts.size(); i++) {
            Integer earlier = first.putIfAbsent(id.apply(parts.get(i)), i);
            if (earlier != null) {
                found.accept(Objection.error(
                        list + "/" + i + "/id",
                        Shown.quoted(id.apply(parts.get(i))) + " again",
                        "an id of its own (" + list + "/" + earlier + " has it already)",
                        "Maybe a copied entry was not renamed."));
            }
        }
    }
}
