package evenrise.model.check;

import evenrise.model.project.Board;
import evenrise.model.project.Load;
import evenrise.model.project.SwitchedSystem;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/** Systems need no circle of each other, and all that is switched belongs to one. */
final class Systems {
    private final ProjectParts parts;
    private final Consumer<Objection> found;

    private Systems(ProjectParts parts, Consumer<Objection> found) {
        this.parts = parts;
        this.found = found;
    }

    static void check(ProjectParts parts, Consumer<Objection> found) {
        if (parts.knows("/systems")) {
            new Systems(parts, found).check();
        }
    }

    private void check() {
        needs();
        List<Board> boards = parts.project.boards();
        for (int i = 0; i < boards.size(); i++) {
            String at = "/boards/" + i + "/system";
            boards.get(i).system().ifPresent(id -> known(id, at));
        }
        List<Load> loads = parts.project.loads();
        for (int i = 0; i < loads.size(); i++) {
            String at = "/loads/" + i;
            loads.get(i).system().ifPresent(id -> known(id, at + "/system"));
            if (parts.knows(at + "/system") && parts.knows(at + "/comes_with") && parts.knows(at + "/switched")) {
                belongs(loads.get(i), at);
            }
            if (parts.project.hasClocks()) {
                after(loads.get(i), at);
            }
        }
        if (!parts.systems.isEmpty()) {
            groups();
        }
    }

    private void needs() {
        Map<String, List<String>> needs = new LinkedHashMap<>();
        List<SwitchedSystem> systems = parts.project.systems();
        for (int i = 0; i < systems.size(); i++) {
            needs.putIfAbsent(systems.get(i).id(), systems.get(i).needs());
            for (int k = 0; k < systems.get(i).needs().size(); k++) {
                known(systems.get(i).needs().get(k), "/systems/" + i + "/needs/" + k);
            }
        }
        for (List<String> circle : Circles.in(needs)) {
            int at = systems.indexOf(parts.systems.get(circle.get(0)));
            String next = circle.get(1 % circle.size());
            error(
                    "/systems/" + at + "/needs/" + systems.get(at).needs().indexOf(next),
                    Shown.quoted(next) + ", in a circle of " + Shown.quoted(circle),
                    "systems that can start one after another",
                    "Maybe leave one of them out.");
        }
    }

    private void belongs(Load load, String at) {
        Optional<String> system = systemOf(load);
        if (!parts.systems.isEmpty() && load.switched() && system.isEmpty()) {
            error(
                    at + "/system",
                    "missing though the load is switched",
                    "the id of one of the systems, whose command switches it",
                    "Maybe add \"system\".");
        }
    }

    private void after(Load load, String at) {
        for (int k = 0; k < load.comesAfter().size(); k++) {
            Load before = parts.loads.get(load.comesAfter().get(k));
            if (before != null && !systemOf(before).equals(systemOf(load)) && load.switched()) {
                error(
                        at + "/comes_after/" + k,
                        Shown.quoted(before.id()) + " of another system, which has a clock of its own",
                        "a load of the same system",
                        "Maybe state that its system needs the other, or let all start together.");
            }
        }
    }

    private void groups() {
        Map<String, Load> first = new HashMap<>();
        for (int i = 0; i < parts.project.loads().size(); i++) {
            Load load = parts.project.loads().get(i);
            Optional<String> group = parts.leadOf(load).orElse(load).shutdownGroup();
            if (group.isEmpty() || !load.switched()) {
                continue;
            }
            Load earlier = first.putIfAbsent(group.get(), load);
            if (earlier != null && !systemOf(earlier).equals(systemOf(load))) {
                error(
                        "/loads/" + i + "/shutdown_group",
                        Shown.quoted(group.get()) + ", in which load " + Shown.quoted(earlier.id())
                                + " of another system is",
                        "a group within one system",
                        "Maybe make a group for each system.");
            }
        }
    }

    private Optional<String> systemOf(Load load) {
        return parts.leadOf(load).orElse(load).system();
    }

    private void known(String id, String at) {
        if (!parts.systems.containsKey(id)) {
            String otherwise = parts.systems.isEmpty() ? "There are none." : "Maybe it was renamed or removed.";
            error(
                    at,
                    Shown.quoted(id),
                    "the id of one of the systems",
                    Nearest.cure(id, parts.systems.keySet(), otherwise));
        }
    }

    private void error(String pointer, String value, String expected, String cure) {
        found.accept(Objection.error(pointer, value, expected, cure));
    }
}
