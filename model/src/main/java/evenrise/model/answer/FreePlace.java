package evenrise.model.answer;

import evenrise.model.plan.Plan;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** A place for a load in the hand: slots of a panel that differ in nothing but their number, or an output of a board. */
public record FreePlace(Optional<String> panel, List<Integer> slots, Optional<String> board, OptionalInt output) {
    public static FreePlace slots(String panel, List<Integer> slots) {
        return new FreePlace(Optional.of(panel), slots, Optional.empty(), OptionalInt.empty());
    }

    public static FreePlace output(String board, int output) {
        return new FreePlace(Optional.empty(), List.of(), Optional.of(board), OptionalInt.of(output));
    }

    /** The plan with the load of that hand here. */
    Plan of(HandMove hand) {
        return panel.isPresent()
                ? hand.toSlot(panel.get(), slots.get(0))
                : hand.toOutput(board.orElseThrow(), output.getAsInt());
    }
}
