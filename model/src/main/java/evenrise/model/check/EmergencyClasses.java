package evenrise.model.check;

import evenrise.model.project.Load;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.ShutdownGroup;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/**
 * Loads that drop on an emergency and loads that hold find boards of their own. Necessary: no board mixes the two, so each
 * kind needs at least as many boards as it fills of the largest; and no board has loads of both kinds fixed to it.
 */
final class EmergencyClasses {
    private EmergencyClasses() {}

    static boolean drops(ShutdownGroup group) {
        return group.onEmergency() == OnEmergency.DROP;
    }

    /** A load without a group holds. */
    static boolean drops(ProjectParts parts, Load load) {
        return load.shutdownGroup()
                .map(parts.groups::get)
                .filter(EmergencyClasses::drops)
                .isPresent();
    }

    static void check(Candidates candidates, Consumer<Objection> found) {
        ProjectParts parts = candidates.parts;
        int dropping = 0;
        int holding = 0;
        Map<String, Load> fixedFirst = new HashMap<>();
        for (Load load : parts.loads.values()) {
            if (!load.switched()) {
                continue;
            }
            boolean drops = drops(parts, load);
            dropping += drops ? 1 : 0;
            holding += drops ? 0 : 1;
            String board = load.fixed().board().orElse(null);
            Load first = board == null ? null : fixedFirst.putIfAbsent(board, load);
            if (first != null && drops(parts, first) != drops) {
                found.accept(Objection.impossible(
                        parts.pointer(load) + "/fixed/board",
                        Shown.quoted(board) + ", where load " + Shown.quoted(first.id())
                                + " is fixed, and only one of the" + " two drops on an emergency",
                        "a board whose loads all drop or all hold",
                        "Maybe fix one of them to another board."));
            }
        }
        List<Integer> outputs = parts.project.boards().stream()
                .map(parts::outputs)
                .sorted(Comparator.reverseOrder())
                .toList();
        boolean enough = dropping + holding
                <= outputs.stream().mapToInt(Integer::intValue).sum();
        int needed = boards(dropping, outputs) + boards(holding, outputs);
        if (enough && needed > outputs.size()) {
            found.accept(Objection.impossible(
                    "/boards",
                    "a list too short: " + dropping + " loads that drop on an emergency and " + holding
                            + " that hold need at least " + needed + " boards, as no board may mix them",
                    "at least " + needed + " boards",
                    "Maybe add a board."));
        }
    }

    private static int boards(int loads, List<Integer> largestFirst) {
        int count = 0;
        for (int left = loads; left > 0 && count < largestFirst.size(); count++) {
            left -= largestFirst.get(count);
        }
        return count;
    }
}
