package evenrise.solver.report;

import evenrise.model.project.OnEmergency;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Where one shutdown group is and when it comes on.
 *
 * @param boards that switch its loads
 * @param firstOnSeconds first switch-on; empty where none of its loads is switched
 */
public record GroupUse(
        String group,
        OnEmergency onEmergency,
        int loads,
        List<String> boards,
        OptionalDouble firstOnSeconds,
        OptionalDouble lastOnSeconds) {

    /** One a group, in the project's order. */
    static List<GroupUse> of(Layout layout) {
        return layout.project().shutdownGroups().stream()
                .map(group -> of(layout, group))
                .toList();
    }

    private static GroupUse of(Layout layout, ShutdownGroup group) {
        List<Placement> placed = layout.placements().stream()
                .filter(each ->
                        each.load().shutdownGroup().filter(group.id()::equals).isPresent())
                .toList();
        return new GroupUse(
                group.id(),
                group.onEmergency(),
                placed.size(),
                placed.stream()
                        .flatMap(each -> each.board().stream())
                        .map(board -> board.id())
                        .distinct()
                        .toList(),
                placed.stream()
                        .flatMapToDouble(each -> each.onSeconds().stream())
                        .min(),
                placed.stream()
                        .flatMapToDouble(each -> each.onSeconds().stream())
                        .max());
    }
}
