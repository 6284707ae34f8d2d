package evenrise.solver.compare;

import evenrise.model.contract.Phrase;
import evenrise.model.project.Board;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Panels and boards that every make-up keeps as the project has them, since something else depends on that very one: a panel
 * that feeds others, one that a load is fixed in, one that a load may sit in while it may not sit in others that hang at the
 * same place; a board that a load is fixed on, and what such boards follow and are fed by.
 */
final class Stays {
    private static final int MOST_NAMED = 6;

    private final Project project;
    private final Map<String, String> panels = new LinkedHashMap<>();
    private final Map<String, String> boards = new LinkedHashMap<>();

    Stays(Project project) {
        this.project = project;
        project.nodes().forEach(node -> {
            feeds(node.fedFrom(), "node '" + node.id() + "'");
            feeds(node.alternateFedFrom(), "node '" + node.id() + "'");
        });
        for (Panel panel : project.panels()) {
            feeds(panel.fedFrom(), "panel '" + panel.id() + "'");
            feeds(panel.alternateFedFrom(), "panel '" + panel.id() + "'");
        }
        for (Load load : project.loads()) {
            load.fixed().panel().ifPresent(id -> panels.putIfAbsent(id, "load '" + load.id() + "' is fixed in it"));
            load.fixed().board().ifPresent(id -> boards.putIfAbsent(id, "load '" + load.id() + "' is fixed on it"));
        }
        follow();
        while (splitLists()) {
            // a panel that stays leaves fewer to stand for the rest of its place
        }
    }

    boolean has(Panel panel) {
        return panels.containsKey(panel.id());
    }

    boolean has(Board board) {
        return boards.containsKey(board.id());
    }

    /** What stays and why, in sentences; empty where nothing does. */
    List<String> sentences() {
        List<String> sentences = new ArrayList<>();
        sentences(sentences, "Panel", panels);
        sentences(sentences, "Board", boards);
        return sentences;
    }

    private static void sentences(List<String> sentences, String noun, Map<String, String> reasons) {
        List<Map.Entry<String, String>> named =
                reasons.entrySet().stream().limit(MOST_NAMED).toList();
        if (!reasons.isEmpty()) {
            String rest = reasons.size() > MOST_NAMED
                    ? "; and " + Phrase.counted(reasons.size() - MOST_NAMED, "other") + " for such reasons"
                    : "";
            sentences.add(noun + (reasons.size() == 1 ? " stays" : "s stay") + " as in the project: "
                    + named.stream()
                            .map(each -> "'" + each.getKey() + "', for " + each.getValue())
                            .collect(Collectors.joining("; "))
                    + rest + ".");
        }
    }

    private void feeds(Optional<String> from, String what) {
        from.filter(id -> project.panels().stream().anyMatch(panel -> panel.id().equals(id)))
                .ifPresent(id -> panels.putIfAbsent(id, "it feeds " + what));
    }

    /** What boards that stay follow stays, and so does a panel that feeds one. */
    private void follow() {
        Map<String, Board> byId = new LinkedHashMap<>();
        project.boards().forEach(board -> byId.put(board.id(), board));
        List<String> open = new ArrayList<>(boards.keySet());
        while (!open.isEmpty()) {
            Board board = byId.get(open.remove(0));
            if (board == null) {
                continue;
            }
            board.after().ifPresent(id -> {
                if (boards.putIfAbsent(id, "board '" + board.id() + "' follows it") == null) {
                    open.add(id);
                }
            });
            feeds(board.fedBy(), "board '" + board.id() + "'");
        }
    }

    private boolean splitLists() {
        Map<String, Set<String>> places = new LinkedHashMap<>();
        project.panels().stream()
                .filter(panel -> !has(panel))
                .forEach(panel -> places.computeIfAbsent(FeedPoint.nameOf(panel), any -> new LinkedHashSet<>())
                        .add(panel.id()));
        int before = panels.size();
        for (Load load : project.loads()) {
            for (Set<String> there : places.values()) {
                List<String> named =
                        load.panels().stream().filter(there::contains).toList();
                if (!named.isEmpty() && named.size() < there.size()) {
                    named.forEach(id -> panels.putIfAbsent(
                            id, "load '" + load.id() + "' may sit in it and not in others at the same place"));
                }
            }
        }
        return panels.size() > before;
    }
}
