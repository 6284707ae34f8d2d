package evenrise.model.check;

import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.EmergencyBy;
import evenrise.model.project.Load;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.ShutdownGroup;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/**
 * Loads that drop on an emergency and loads that hold find boards of their own, and so do systems. Necessary: a board
 * serves one system, and where an emergency drops whole boards it does not mix the two, so each kind needs at least as many
 * boards as it fills of the largest; and no such board has loads of both kinds fixed to it.
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

    /** Whether an emergency drops chosen outputs of a board. */
    static boolean dropsByOutput(ProjectParts parts, Board board) {
        BoardType type = parts.types.get(board.type());
        return type != null && type.emergencyBy() == EmergencyBy.OUTPUT;
    }

    /** Loads of one class share boards with their like alone. */
    private record Kind(Optional<String> system, boolean drops) {}

    static void check(Candidates candidates, Consumer<Objection> found) {
        ProjectParts parts = candidates.parts;
        boolean mayMix = parts.project.boards().stream().anyMatch(board -> dropsByOutput(parts, board));
        Map<Kind, Integer> counts = new LinkedHashMap<>();
        Map<String, Load> fixedFirst = new HashMap<>();
        for (Load load : parts.loads.values()) {
            if (!ProjectParts.needsOutput(load)) {
                continue;
            }
            boolean drops = drops(parts, load);
            counts.merge(new Kind(load.system(), drops && !mayMix), 1, Integer::sum);
            Board board = load.fixed().board().map(parts.boards::get).orElse(null);
            Load first = board == null || dropsByOutput(parts, board) ? null : fixedFirst.putIfAbsent(board.id(), load);
            if (first != null && drops(parts, first) != drops) {
                found.accept(Objection.impossible(
                        parts.pointer(load) + "/fixed/board",
                        Shown.quoted(board.id()) + ", where load " + Shown.quoted(first.id())
                                + " is fixed, and only one of the two drops on an emergency",
                        "a board whose loads all drop or all hold",
                        "Maybe fix one of them to another board."));
            }
        }
        List<Integer> outputs = parts.project.boards().stream()
                .map(parts::usableOutputs)
                .sorted(Comparator.reverseOrder())
                .toList();
        int loads = counts.values().stream().mapToInt(Integer::intValue).sum();
        boolean enough = loads <= outputs.stream().mapToInt(Integer::intValue).sum();
        int needed = counts.values().stream()
                .mapToInt(count -> boards(count, outputs))
                .sum();
        if (enough && needed > outputs.size()) {
            found.accept(Objection.impossible(
                    "/boards",
                    "a list too short: " + text(counts) + " need at least " + needed
                            + " boards, as no board may mix them",
                    "at least " + needed + " boards",
                    "Maybe add a board."));
        }
    }

    /** Of one command in the words of emergencies alone. */
    private static String text(Map<Kind, Integer> counts) {
        if (counts.keySet().stream().allMatch(kind -> kind.system().isEmpty())) {
            return counts.getOrDefault(new Kind(Optional.empty(), true), 0) + " loads that drop on an emergency and "
                    + counts.getOrDefault(new Kind(Optional.empty(), false), 0) + " that hold";
        }
        return counts.entrySet().stream()
                .map(each -> each.getValue()
                        + " loads" + (each.getKey().drops() ? " that drop on an emergency" : "") + " of system "
                        + Shown.quoted(each.getKey().system().orElse("none")))
                .collect(Collectors.joining(", "));
    }

    private static int boards(int loads, List<Integer> largestFirst) {
        int count = 0;
        for (int left = loads; left > 0 && count < largestFirst.size(); count++) {
            left -= largestFirst.get(count);
        }
        return count;
    }
}
