package evenrise.model.check;

import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.EmergencyBy;
import evenrise.model.project.Load;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.ShutdownGroup;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Consumer;

/**
 * Loads that drop on an emergency and loads that hold find boards of their own. Necessary: where an emergency drops whole
 * boards, none has loads of both kinds fixed to it; and see {@link BoardsForEachClass}.
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

    static void check(Candidates candidates, Consumer<Objection> found) {
        ProjectParts parts = candidates.parts;
        Map<String, Load> fixedFirst = new HashMap<>();
        boolean isSound = true;
        for (Load load : parts.loads.values()) {
            Board board = ProjectParts.needsOutput(load)
                    ? load.fixed().board().map(parts.boards::get).orElse(null)
                    : null;
            Load first = board == null || dropsByOutput(parts, board) ? null : fixedFirst.putIfAbsent(board.id(), load);
            if (first != null && drops(parts, first) != drops(parts, load)) {
                isSound = false;
                found.accept(Objection.impossible(
                        parts.pointer(load) + "/fixed/board",
                        Shown.quoted(board.id()) + ", where load " + Shown.quoted(first.id())
                                + " is fixed, and only one of the two drops on an emergency",
                        "a board whose loads all drop or all hold",
                        "Maybe fix one of them to another board."));
            }
        }
        if (isSound) {
            new BoardsForEachClass(candidates, found).check();
        }
    }
}
