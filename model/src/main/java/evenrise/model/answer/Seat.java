package evenrise.model.answer;

import evenrise.model.plan.Assignment;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Where a load sits and what switches it.
 *
 * @param slot of its first pole
 * @param board that switches it; empty where none does
 * @param askedSeconds switch-on time that is asked of an output with a time of its own; of no matter elsewhere
 */
public record Seat(String panel, int slot, Optional<String> board, OptionalInt output, OptionalDouble askedSeconds) {

    /** Where an assignment has its load. */
    public static Seat of(Assignment assignment) {
        return new Seat(
                assignment.panel(), assignment.slot(), assignment.board(), assignment.output(), assignment.onSeconds());
    }

    /** The same output, another slot. */
    Seat at(String otherPanel, int otherSlot) {
        return new Seat(otherPanel, otherSlot, board, output, askedSeconds);
    }

    /** The same slot, another output. */
    Seat switchedBy(String otherBoard, int otherOutput) {
        return new Seat(panel, slot, Optional.of(otherBoard), OptionalInt.of(otherOutput), askedSeconds);
    }

    /** The same slot, the output of another seat and what is asked of it. */
    Seat withLeadOf(Seat other) {
        return new Seat(panel, slot, other.board, other.output, other.askedSeconds);
    }

    /** The same place at another time. */
    Seat askedAt(double seconds) {
        return new Seat(panel, slot, board, output, OptionalDouble.of(seconds));
    }

    /** The assignment with this seat; what follows from it is left as it was. */
    Assignment in(Assignment assignment) {
        return assignment
                .with()
                .panel(panel)
                .slot(slot)
                .board(board)
                .output(output)
                .onSeconds(askedSeconds)
                .build();
    }
}
