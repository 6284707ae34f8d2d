package evenrise.solver.document;

import evenrise.model.project.SwitchedSystem;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.List;
import java.util.Optional;

/**
 * One system: what its command switches, and for how long.
 *
 * @param needs systems that are on before
 * @param endSeconds its last switch-on; from its own command, where it has one
 */
public record SystemRow(String system, List<String> needs, int loads, List<String> boards, double endSeconds) {
    public SystemRow {
        needs = List.copyOf(needs);
        boards = List.copyOf(boards);
    }

    static List<SystemRow> of(Layout layout) {
        return layout.project().systems().stream()
                .map(system -> of(layout, system))
                .toList();
    }

    private static SystemRow of(Layout layout, SwitchedSystem system) {
        List<Placement> own = layout.placements().stream()
                .filter(Placement::isSequenced)
                .filter(each -> each.load().system().equals(Optional.of(system.id())))
                .toList();
        return new SystemRow(
                system.id(),
                system.needs(),
                own.size(),
                own.stream()
                        .flatMap(each -> each.board().stream())
                        .map(board -> board.id())
                        .distinct()
                        .sorted()
                        .toList(),
                own.stream()
                        .mapToDouble(each -> each.onSeconds().orElseThrow())
                        .max()
                        .orElse(0));
    }
}
