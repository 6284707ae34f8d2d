package evenrise.solver.document;

import evenrise.model.project.Board;
import evenrise.model.rules.Layout;
import evenrise.solver.report.SystemUse;
import java.util.List;
import java.util.Optional;

/**
 * One system, with the boards that its command runs through.
 *
 * @param boards that switch loads of it
 */
public record SystemRow(SystemUse use, List<String> boards) {
    public SystemRow {
        boards = List.copyOf(boards);
    }

    static List<SystemRow> of(Layout layout) {
        return SystemUse.of(layout).stream()
                .map(use -> new SystemRow(use, boards(layout, use.system())))
                .toList();
    }

    private static List<String> boards(Layout layout, String system) {
        return layout.placements().stream()
                .filter(each -> each.isSequenced() && each.load().system().equals(Optional.of(system)))
                .flatMap(each -> each.board().stream())
                .map(Board::id)
                .distinct()
                .sorted()
                .toList();
    }
}
