package evenrise.solver.report;

import java.util.List;

/** How every board is set and used. */
final class BoardTable {
    private BoardTable() {}

    static List<String> lines(List<BoardUse> boards, Paint paint) {
        if (boards.isEmpty()) {
            return new Section(paint, "Boards").text("The project has none.").lines();
        }
        Table table = new Table()
                .words("Board")
                .text("Type")
                .words("Panel")
                .text("After")
                .number("Delay, s")
                .number("Step, s")
                .number("In use")
                .number("of")
                .number("First on, s")
                .number("Last on, s");

        for (BoardUse board : boards) {
            table.row(
                    board.board(),
                    board.type(),
                    board.panel(),
                    board.after().orElse(Numbers.NONE),
                    Numbers.seconds(board.startDelaySeconds()),
                    Numbers.seconds(board.stepSeconds()),
                    Integer.toString(board.outputsUsed()),
                    Integer.toString(board.outputs()),
                    Numbers.seconds(board.firstOnSeconds()),
                    Numbers.seconds(board.lastOnSeconds()));
        }
        return new Section(paint, "Boards").table(table).lines();
    }
}
