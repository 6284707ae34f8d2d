package evenrise.solver.document;

import evenrise.model.rules.Layout;
import evenrise.solver.report.GroupUse;
import java.util.ArrayList;
import java.util.List;

/** What drops and what holds on an emergency: group by group, and load by load. */
final class EmergencyTables {
    private EmergencyTables() {}

    static DocumentTable<GroupUse> groups(Layout layout) {
        List<GroupUse> groups = GroupUse.of(layout);
        List<Column<GroupUse>> columns = new ArrayList<>(List.of(
                Column.text("group", "Group", GroupUse::group),
                Column.text("effect", "On an emergency", each -> EmergencyEffect.word(each.onEmergency())),
                Column.count("loads", "Loads", GroupUse::loads)
                        .calculated(each -> each.loads() == 0 ? "" : "SUMPRODUCT((circuits_group=[group])*1)"),
                Column.number("running", "Running, all loads", "A", GroupUse::runningAmps)
                        .calculated(each ->
                                each.loads() == 0 ? "" : "SUMPRODUCT((circuits_group=[group])*circuits_running)"),
                Column.text("boards", "Boards", each -> String.join(", ", each.boards())),
                Column.text("panels", "Panels", each -> String.join(", ", each.panels()))));
        if (groups.stream().anyMatch(each -> !each.notAssigned().isEmpty())) {
            columns.add(
                    Column.text("notAssigned", "No output switches", each -> String.join(", ", each.notAssigned())));
        }
        return DocumentTable.of(
                "groups", "Shutdown groups: what drops and what holds on an emergency", "", columns, groups);
    }

    static DocumentTable<EmergencyEffect> loads(Layout layout, List<PlannedCircuit> circuits) {
        return DocumentTable.ofLoads(
                "emergency",
                "On an emergency: load by load",
                PlannedCircuit.leftOut(layout),
                List.of(
                        Column.text("group", "Group", EmergencyEffect::group),
                        Column.text("effect", "On an emergency", EmergencyEffect::effect),
                        Column.text("load", "Load", each -> each.circuit().load()),
                        Column.text("name", "Name", each -> each.circuit().name()),
                        Column.text("panel", "Panel", each -> each.circuit().panel()),
                        Column.text("slots", "Slots", each -> each.circuit().slots()),
                        Column.text("board", "Board", each -> each.circuit().switchedWith()),
                        Column.countOrNone(
                                "output", "Output", each -> each.circuit().output())),
                EmergencyEffect.of(layout, circuits),
                each -> each.circuit().load());
    }
}
