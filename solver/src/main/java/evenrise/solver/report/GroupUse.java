package evenrise.solver.report;

import evenrise.model.project.Load;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where one shutdown group is and when it comes on.
 *
 * @param boards that switch its loads
 * @param panels that feed them
 * @param runningAmps rms, of all its loads together
 * @param notAssigned its loads that no output switches, or that the plan leaves out: no emergency reaches these
 * @param firstOnSeconds first switch-on; empty where none of its loads is switched
 */
public record GroupUse(
        String group,
        OnEmergency onEmergency,
        int loads,
        List<String> boards,
        OptionalDouble firstOnSeconds,
        OptionalDouble lastOnSeconds,
        List<String> panels,
        double runningAmps,
        List<String> notAssigned) {

    /** One a group, in the project's order. */
    public static List<GroupUse> of(Layout layout) {
        Map<String, List<Placement>> placed = new HashMap<>();
        layout.placements()
                .forEach(each -> each.load()
                        .shutdownGroup()
                        .ifPresent(group -> placed.computeIfAbsent(group, any -> new ArrayList<>())
                                .add(each)));
        Map<String, List<String>> notAssigned = new HashMap<>();
        layout.project().loads().stream()
                .filter(load -> load.switched()
                        && layout.placement(load.id())
                                .filter(Placement::isSequenced)
                                .isEmpty())
                .forEach(load -> groupOf(layout, load)
                        .ifPresent(group -> notAssigned
                                .computeIfAbsent(group, any -> new ArrayList<>())
                                .add(load.id())));
        return layout.project().shutdownGroups().stream()
                .map(group -> of(
                        group,
                        placed.getOrDefault(group.id(), List.of()),
                        notAssigned.getOrDefault(group.id(), List.of())))
                .toList();
    }

    private static GroupUse of(ShutdownGroup group, List<Placement> placed, List<String> notAssigned) {
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
                        .max(),
                placed.stream()
                        .map(each -> each.assignment().panel())
                        .distinct()
                        .toList(),
                placed.stream().mapToDouble(each -> each.load().runningAmps()).sum(),
                notAssigned);
    }

    /** What is behind a contactor is of its load's group. */
    private static Optional<String> groupOf(Layout layout, Load load) {
        return layout.index().load(load.id()).flatMap(Load::shutdownGroup);
    }
}
