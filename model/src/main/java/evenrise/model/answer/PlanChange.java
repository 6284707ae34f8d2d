package evenrise.model.answer;

import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What of a plan would be another.
 *
 * @param way how a person would name it
 * @param seats of the loads that move, by their ids
 * @param setting of the board that is set anew
 */
public record PlanChange(Way way, Map<String, Seat> seats, Optional<BoardSetting> setting) {
    /** How a load comes to another place. */
    public enum Way {
        /** Another slot, the same output. */
        SLOT,
        /** Another output, the same slot. */
        OUTPUT,
        /** Another slot and another output. */
        BOTH,
        /** Two loads exchange their slots. */
        SLOTS_EXCHANGED,
        /** Two loads exchange their outputs. */
        OUTPUTS_EXCHANGED,
        /** Two loads exchange slots and outputs. */
        PLACES_EXCHANGED,
        /** Its board is set otherwise. */
        SETTING,
        /** Its output has another time. */
        TIME
    }

    public PlanChange {
        seats = Map.copyOf(seats);
    }

    static PlanChange of(Way way, Map<String, Seat> seats) {
        return new PlanChange(way, seats, Optional.empty());
    }

    static PlanChange of(BoardSetting setting) {
        return new PlanChange(Way.SETTING, Map.of(), Optional.of(setting));
    }

    /** The plan so changed; times, phases and figures in it are those of before. */
    public Plan in(Plan plan) {
        return Plan.builder()
                .cautions(plan.cautions())
                .boards(setting.map(set -> withSetting(plan.boards(), set)).orElse(plan.boards()))
                .assignments(plan.assignments().stream()
                        .map(each -> Optional.ofNullable(seats.get(each.load()))
                                .map(seat -> seat.in(each))
                                .orElse(each))
                        .toList())
                .madeBy(plan.madeBy())
                .build();
    }

    private static List<BoardSetting> withSetting(List<BoardSetting> settings, BoardSetting set) {
        return settings.stream()
                .map(each -> each.id().equals(set.id()) ? set : each)
                .toList();
    }
}
