package evenrise.solver.report;

import evenrise.model.contract.Words;
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
        for (GroupUse group : groups) {
            table.row(
                    group.group(),
                    Words.word(group.onEmergency()),
                    Integer.toString(group.loads()),
                    Numbers.seconds(group.firstOnSeconds()),
                    Numbers.seconds(group.lastOnSeconds()),
                    group.boards().isEmpty() ? Numbers.NONE : String.join(", ", group.boards()));
        }
        return new Section(paint, "Shutdown groups").table(table).lines();
    }
}
