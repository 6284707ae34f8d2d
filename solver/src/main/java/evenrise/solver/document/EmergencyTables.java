package evenrise.solver.document;

import evenrise.model.project.Board;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import evenrise.solver.document.Grid.Column;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** What drops and what holds on an emergency: group by group, and load by load. */
final class EmergencyTables {
    private static final String DROPS = "drops";
    private static final String HOLDS = "holds";

    private final Layout layout;

    EmergencyTables(Layout layout) {
        this.layout = layout;
    }

    Grid groups() {
        Map<String, List<Placement>> placed = layout.groups();
        List<List<Object>> rows = new ArrayList<>();
        for (ShutdownGroup group : layout.project().shutdownGroups()) {
            List<Placement> loads = placed.getOrDefault(group.id(), List.of());
            rows.add(List.of(
                    group.id(),
                    group.onEmergency() == OnEmergency.DROP ? DROPS : HOLDS,
                    loads.size(),
                    loads.stream()
                            .mapToDouble(each -> each.load().runningAmps())
                            .sum(),
                    distinct(loads, Places::board),
                    distinct(loads, each -> each.assignment().panel())));
        }
        return new Grid(
                "groups",
                "Shutdown groups: what drops and what holds on an emergency",
                List.of(
                        Column.text("Group"),
                        Column.text("On an emergency"),
                        Column.number("Loads", ""),
                        Column.number("Running, all loads", "A"),
                        Column.text("Boards"),
                        Column.text("Panels")),
                rows);
    }

    /** Group by group; then the switched loads without a group, which hold; then what no board switches. */
    Grid loads() {
        Map<String, List<List<Object>>> byGroup = new LinkedHashMap<>();
        Map<String, String> what = new LinkedHashMap<>();
        layout.project().shutdownGroups().forEach(group -> {
            byGroup.put(group.id(), new ArrayList<>());
            what.put(group.id(), group.onEmergency() == OnEmergency.DROP ? DROPS : HOLDS);
        });
        List<List<Object>> alone = new ArrayList<>();
        List<List<Object>> unswitched = new ArrayList<>();
        for (Placement each : Places.inOrder(layout)) {
            String group = each.load().shutdownGroup().orElse("");
            if (!each.load().switched()) {
                unswitched.add(row("not switched", "stays on", each));
            } else if (byGroup.containsKey(group)) {
                byGroup.get(group).add(row(group, what.get(group), each));
            } else {
                alone.add(row("without a group", HOLDS, each));
            }
        }
        List<List<Object>> rows = new ArrayList<>();
        byGroup.values().forEach(rows::addAll);
        rows.addAll(alone);
        rows.addAll(unswitched);
        return new Grid(
                "emergency",
                "On an emergency: load by load",
                List.of(
                        Column.text("Group"),
                        Column.text("On an emergency"),
                        Column.text("Load"),
                        Column.text("Name"),
                        Column.text("Panel"),
                        Column.text("Slots"),
                        Column.text("Board"),
                        Column.number("Output", "")),
                rows);
    }

    private static List<Object> row(String group, String what, Placement each) {
        return List.of(
                group,
                what,
                each.id(),
                each.load().name(),
                each.assignment().panel(),
                Places.slots(each),
                each.board().map(Board::id).orElse(""),
                Places.output(each));
    }

    private static String distinct(List<Placement> loads, Function<Placement, String> of) {
        return loads.stream().map(of).distinct().collect(Collectors.joining(", "));
    }
}
