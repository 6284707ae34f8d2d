package evenrise.solver.rendering;

import evenrise.model.contract.Harmless;
import evenrise.solver.document.Schedule;
import evenrise.solver.document.Schedule.Slot;
import java.util.stream.Stream;

/**
 * How the columns and rows of one printed schedule are sized: every row of a sheet as high as the next, and what must be
 * read on it in full. Names of loads take what remains, and are cut with a sign that says so.
 *
 * @param boardMillimetres width of the column of outputs
 * @param emergencyMillimetres width of the column that says what drops and holds
 * @param lines of text in each row
 * @param signs that fit beside each other in the column of loads
 */
public record ScheduleFit(int boardMillimetres, double emergencyMillimetres, int lines, int signs) {
    /** Of the narrower paper, between its margins. */
    private static final double ACROSS_MILLIMETRES = 255;

    /** All columns of one side but those of loads, outputs, emergencies and conductors. */
    private static final double OTHERS_MILLIMETRES = 24.5;

    private static final double LEAST_EMERGENCY_MILLIMETRES = 8.5;

    private static final double POWER_MILLIMETRES = 8.4;
    private static final double WIRE_MILLIMETRES = 13;
    private static final double PER_SIGN_MILLIMETRES = 1.13;
    private static final int LEAST_BOARD_MILLIMETRES = 16;
    private static final int MOST_BOARD_MILLIMETRES = 40;

    /** So many rows leave room on one sheet for a second line in each. */
    private static final int FEW_ROWS = 18;

    static ScheduleFit of(Schedule schedule) {
        int longest =
                slots(schedule).mapToInt(slot -> slot.control().length()).max().orElse(0);
        int board = (int) Math.ceil(2.5 + PER_SIGN_MILLIMETRES * longest);
        board = Math.max(LEAST_BOARD_MILLIMETRES, Math.min(MOST_BOARD_MILLIMETRES, board));
        double emergency = Math.max(
                LEAST_EMERGENCY_MILLIMETRES,
                1.5
                        + PER_SIGN_MILLIMETRES
                                * slots(schedule)
                                        .mapToInt(slot -> slot.emergency().length())
                                        .max()
                                        .orElse(0));
        int sides = schedule.isTwoSided() ? 2 : 1;
        double side = ACROSS_MILLIMETRES / sides
                - POWER_MILLIMETRES * schedule.phases().size();
        double load = side - OTHERS_MILLIMETRES - emergency - board - (schedule.hasWires() ? WIRE_MILLIMETRES : 0);
        int signs = (int) ((load - 1.5) / PER_SIGN_MILLIMETRES);
        boolean isTight = slots(schedule).anyMatch(slot -> slot.load().length() > signs - 2);
        return new ScheduleFit(board, emergency, isTight || schedule.rows().size() <= FEW_ROWS ? 2 : 1, signs);
    }

    private static Stream<Slot> slots(Schedule schedule) {
        return schedule.rows().stream().flatMap(row -> Stream.of(row.left(), row.right()));
    }

    /** What stands beside a load's id, or in the rows of its further poles, as far as there is room. */
    public String beside(Slot slot) {
        String text = slot.beside();
        int room = lines * signs - (slot.isFirst() ? slot.load().length() + 2 : 0) - 2 * (lines - 1);
        if (text.length() <= room) {
            return text;
        }
        return room < 3 ? "…" : Harmless.cut(text, room);
    }
}
