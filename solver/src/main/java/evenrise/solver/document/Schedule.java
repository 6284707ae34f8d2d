package evenrise.solver.document;

import evenrise.model.contract.Decimals;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A panel's slots in their physical order.
 *
 * @param fedFrom what feeds it
 * @param head what a permit desk looks for first; empty values are stated by nobody
 * @param phases heads of the columns of volt-amperes
 * @param isTwoSided odd slots on the left, even ones on the right; else one column
 * @param hasWires whether any circuit states its conductor
 * @param summary connected load, demand and what they are held against
 * @param sums the same as numbers, as far as its own circuits do not make them
 * @param totals running current of each phase and the like, in words
 */
public record Schedule(
        String panel,
        String fedFrom,
        List<Fact> head,
        List<PhaseHead> phases,
        boolean isTwoSided,
        boolean hasWires,
        List<Row> rows,
        List<LoadSummary.Line> summary,
        List<Fact> totals,
        PanelSums sums) {
    /** @param name {@code A}, or {@code L1 (A)} where conductors are called so */
    public record PhaseHead(String phase, String name) {}

    /** One bus row; right is empty where the panel has one side. */
    public record Row(String phase, Slot left, Slot right) {}

    /**
     * One slot.
     *
     * @param number 0 for none
     * @param state what it is, in a word: load, pole, spare, space, reserved; pole is a further one of the breaker above,
     *     spare a breaker that feeds nothing, space a slot without one
     * @param load empty where there is no breaker
     * @param pole of the breaker, from 1; 0 where there is none
     * @param poles of the breaker; 0 where there is none
     * @param runningAmps of that pole
     * @param voltAmps of that pole
     * @param voltAmpsPerAmp of that pole
     * @param continuousFactor what it counts by before the device, 1 where practice asks for nothing
     * @param onSeconds empty for what has no time of its own
     * @param on when it comes on, in words; empty where nothing sits there
     * @param control board and output; empty for what is not switched
     * @param emergency drop or hold; empty for what is not switched
     * @param wire size of its line conductor; empty where it is not stated
     * @param marks contactor and rack; empty where there are none
     * @param further which pole it is, in words; empty for the first
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
            double voltAmps,
            double voltAmpsPerAmp,
            double continuousFactor,
            OptionalDouble onSeconds,
            String on,
            String control,
            String emergency,
            String wire,
            String marks,
            String further) {
        static final Slot NONE = free(0, "none");

        static Slot free(int number, String state) {
            return new Slot(number, state, "", "", 0, 0, 0, 0, 0, 0, 0, OptionalDouble.empty(), "", "", "", "", "", "");
        }

        /** Whether its breaker begins here. */
        public boolean isFirst() {
            return pole == 1;
        }

        /** What stands beside the load's id, or where a further pole has its row: there is room for the name. */
        public String beside() {
            String named = ((name.equals(load) ? "" : name) + " " + marks).strip();
            if (poles == 1) {
                return named;
            }
            return pole == 1 ? "" : pole == 2 && !named.isEmpty() ? named : further;
        }

        /** {@code 20/2}: rating over poles. */
        public String breaker() {
            return poles == 0 ? "" : Unrounded.breaker(poles, breakerAmps);
        }

        public String running() {
            return poles == 0 ? "" : Decimals.fixed(runningAmps, 2);
        }

        public String power() {
            return poles == 0 ? "" : Decimals.fixed(voltAmps, 0);
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
        head = List.copyOf(head);
        phases = List.copyOf(phases);
        rows = List.copyOf(rows);
        summary = List.copyOf(summary);
        totals = List.copyOf(totals);
    }
}
