package evenrise.solver.report;

import evenrise.model.contract.Words;
import java.util.ArrayList;
import java.util.List;

/** Where every shutdown group is and when it comes on. */
final class GroupTable {
    private GroupTable() {}

    static List<String> lines(List<GroupUse> groups, Paint paint) {
        Table table = new Table()
                .words("Group")
                .words("On emergency")
                .number("Loads")
                .number("First on, s")
                .number("Last on, s")
                .text("Boards");
        boolean isBroken = groups.stream().anyMatch(each -> !each.notAssigned().isEmpty());
        if (isBroken) {
            table.text("No output switches");
        }
        for (GroupUse group : groups) {
            List<String> cells = new ArrayList<>(List.of(
                    group.group(),
                    Words.word(group.onEmergency()),
                    Integer.toString(group.loads()),
                    Numbers.seconds(group.firstOnSeconds()),
                    Numbers.seconds(group.lastOnSeconds()),
                    group.boards().isEmpty() ? Numbers.NONE : String.join(", ", group.boards())));
            if (isBroken) {
                cells.add(String.join(", ", group.notAssigned()));
            }
            table.row(cells.toArray(String[]::new));
        }
        return new Section(paint, "Shutdown groups").table(table).lines();
    }
}
