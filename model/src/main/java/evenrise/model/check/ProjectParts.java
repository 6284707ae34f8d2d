package evenrise.model.check;

import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.ShutdownGroup;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/** A project with its parts by id; of parts with the same id, the first. */
final class ProjectParts {
    final Project project;
    final Map<String, Panel> panels;
    final Map<String, BoardType> types;
    final Map<String, Board> boards;
    final Map<String, ShutdownGroup> groups;
    final Map<String, Load> loads;
    /** Position of each load in the project. */
    final Map<String, Integer> loadIndex = new HashMap<>();

    private final Set<String> unread;

    ProjectParts(Project project, Set<String> unread) {
        this.project = project;
        this.unread = unread;
        panels = byId(project.panels(), Panel::id);
        types = byId(project.boardTypes(), BoardType::id);
        boards = byId(project.boards(), Board::id);
        groups = byId(project.shutdownGroups(), ShutdownGroup::id);
        loads = byId(project.loads(), Load::id);
        for (int i = 0; i < project.loads().size(); i++) {
            loadIndex.putIfAbsent(project.loads().get(i).id(), i);
        }
    }

    /** Whether what stands at the pointer, and all it is part of, could be read. */
    boolean knows(String pointer) {
        for (String at = pointer; !unread.isEmpty() && !at.isEmpty(); at = at.substring(0, at.lastIndexOf('/'))) {
            if (unread.contains(at)) {
                return false;
            }
        }
        return true;
    }

    int phases() {
        return project.supply().system().phases().size();
    }

    /** Outputs of a board; 0 where its type is unknown. */
    int outputs(Board board) {
        BoardType type = types.get(board.type());
        return type == null ? 0 : type.outputs();
    }

    String pointer(Load load) {
        return "/loads/" + loadIndex.get(load.id());
    }

    String pointer(Board board) {
        return "/boards/" + project.boards().indexOf(board);
    }

    private static <T> Map<String, T> byId(List<T> all, Function<T, String> id) {
        Map<String, T> map = new java.util.LinkedHashMap<>();
        all.forEach(it -> map.putIfAbsent(id.apply(it), it));
        return map;
    }
}
