package evenrise.solver.report.page;

import java.util.List;

/**
 * A panel's slots in their physical order.
 *
 * @param isTwoSided odd slots on the left, even ones on the right; else one column
 * @param totals running current of each phase and the like, in words
 */
public record Schedule(String panel, String rating, boolean isTwoSided, List<Row> rows, List<Fact> totals) {
    /** One bus row; right is empty where the panel has one side. */
    public record Row(String phase, Slot left, Slot right) {}

    /**
     * One slot.
     *
     * @param number 0 for none
     * @param load empty where it is free, reserved, or a further pole of the breaker above
     * @param state what it is, in a word: load, pole, spare, reserved
     */
    public record Slot(int number, String state, String load, String name, String breaker, String running, String on) {
        static final Slot NONE = new Slot(0, "none", "", "", "", "", "");
    }

    public Schedule {
        rows = List.copyOf(rows);
        totals = List.copyOf(totals);
    }
}
