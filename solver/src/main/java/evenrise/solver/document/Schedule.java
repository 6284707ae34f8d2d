package evenrise.solver.document;

import evenrise.model.contract.Decimals;
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
     * @param state what it is, in a word: load, pole, spare, reserved; pole is a further one of the breaker above
     * @param load empty where it is free or reserved
     * @param pole of the breaker, from 1; 0 where there is none
     * @param poles of the breaker; 0 where there is none
     * @param runningAmps of that pole
     * @param on when it comes on, in words; empty where nothing sits there
     * @param marks contactor and rack; empty where there are none
     */
    public record Slot(
            int number,
            String state,
            String load,
            String name,
            int pole,
            int poles,
            double breakerAmps,
            double runningAmps,
            String on,
            String marks) {
        static final Slot NONE = free(0, "none");

        static Slot free(int number, String state) {
            return new Slot(number, state, "", "", 0, 0, 0, 0, "", "");
        }

        /** {@code 20/2}. */
        public String breaker() {
            return poles == 0 ? "" : Unrounded.breaker(poles, breakerAmps);
        }

        public String running() {
            return poles == 0 ? "" : Decimals.fixed(runningAmps, 2);
        }

        /** Where it stands in its breaker: alone, first, middle or last. */
        public String join() {
            if (poles < 2) {
                return "alone";
            }
            return pole == 1 ? "first" : pole == poles ? "last" : "middle";
        }
    }

    public Schedule {
        rows = List.copyOf(rows);
        totals = List.copyOf(totals);
    }
}
