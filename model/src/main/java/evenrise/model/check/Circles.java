package evenrise.model.check;

import evenrise.model.project.Board;
import evenrise.model.project.Load;
import evenrise.model.project.Role;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/** Nothing comes after itself, by whatever detour. One circle is named for each knot of them. */
final class Circles {
    private Circles() {}

    static void check(ProjectParts parts, Consumer<Objection> found) {
        Map<String, List<String>> boards = new LinkedHashMap<>();
        List<Board> allBoards = parts.project.boards();
        for (Board board : allBoards) {
            boards.putIfAbsent(board.id(), board.after().stream().toList());
        }
        for (List<String> circle : in(boards)) {
            int at = allBoards.indexOf(parts.boards.get(circle.get(0)));
            found.accept(finding("/boards/" + at + "/after", circle, "boards that start with the command in the end"));
        }
        Map<String, List<String>> loads = new LinkedHashMap<>();
        for (Load load : parts.project.loads()) {
            loads.putIfAbsent(load.id(), before(parts, load));
        }
        for (List<String> circle : in(loads)) {
            Load first = parts.loads.get(circle.get(0));
            String next = circle.get(1 % circle.size());
            int at = first.comesAfter().indexOf(next);
            String field = at >= 0 ? "/comes_after/" + at : "/needs_groups/" + groupOf(parts, first, next);
            found.accept(finding(parts.pointer(first) + field, circle, "an order without circles"));
        }
    }

    /** What it comes after, and the processing of the groups that it needs. */
    private static List<String> before(ProjectParts parts, Load load) {
        if (load.needsGroups().isEmpty()) {
            return load.comesAfter();
        }
        List<String> before = new ArrayList<>(load.comesAfter());
        for (Load each : parts.project.loads()) {
            if (each.role() == Role.PROCESSING
                    && each.shutdownGroup()
                            .filter(load.needsGroups().get()::contains)
                            .isPresent()) {
                before.add(each.id());
            }
        }
        return before;
    }

    private static int groupOf(ProjectParts parts, Load load, String needed) {
        return parts.loads
                .get(needed)
                .shutdownGroup()
                .map(load.needsGroups().orElseThrow()::indexOf)
                .orElse(0);
    }

    private static Objection finding(String pointer, List<String> circle, String expected) {
        List<String> named = new ArrayList<>();
        circle.stream().limit(8).forEach(id -> named.add(Shown.quoted(id)));
        if (circle.size() > named.size()) {
            named.add("… (" + circle.size() + " in all)");
        }
        named.add(named.get(0));
        String value = circle.size() == 1
                ? Shown.quoted(circle.get(0)) + ", itself"
                : "part of a circle: " + String.join(" after ", named);
        return Objection.error(pointer, value, expected, "Maybe leave one of them out.");
    }

    /** Circles of the graph, each from its first node on along the arrows; no two share a node. */
    static List<List<String>> in(Map<String, List<String>> arrows) {
        List<List<String>> circles = new ArrayList<>();
        Map<String, Integer> state = new HashMap<>(); // absent: new, ≥ 0: how many arrows of it are followed, −1: done
        for (String start : arrows.keySet()) {
            Deque<String> path = new ArrayDeque<>();
            if (!state.containsKey(start)) {
                path.addLast(start);
                state.put(start, 0);
            }
            while (!path.isEmpty()) {
                String at = path.getLast();
                int next = state.get(at);
                List<String> ways = arrows.get(at);
                if (next == ways.size()) {
                    state.put(at, -1);
                    path.removeLast();
                    continue;
                }
                state.put(at, next + 1);
                String to = ways.get(next);
                Integer seen = arrows.containsKey(to) ? state.get(to) : Integer.valueOf(-1);
                if (seen == null) {
                    path.addLast(to);
                    state.put(to, 0);
                } else if (seen >= 0) {
                    List<String> circle = new ArrayList<>(path);
                    circle = circle.subList(circle.indexOf(to), circle.size());
                    circles.add(List.copyOf(circle));
                    circle.forEach(id -> state.put(id, -1));
                    while (!path.isEmpty() && state.get(path.getLast()) == -1) {
                        path.removeLast();
                    }
                }
            }
        }
        return circles;
    }
}
