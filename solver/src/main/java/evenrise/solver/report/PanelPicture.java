package evenrise.solver.report;

import java.util.List;

/**
 * A panel as a stage leaves it, slot beside slot as on the wall, with what the stage changes.
 *
 * @param isTwoSided whether odd slots are on the left and even ones on the right
 * @param positions by their numbers
 */
public record PanelPicture(String panel, boolean isTwoSided, List<Position> positions) {
    static final String EMPTY = "-";

    public PanelPicture {
        positions = List.copyOf(positions);
    }

    /**
     * A slot.
     *
     * @param line letter of its phase
     * @param now what is in it: the load, a spare, that it is reserved, or nothing
     * @param first slot of the breaker where this is a further pole of it; empty else
     * @param was what was in it before
     * @param breaker rating and poles, where the breaker begins here
     * @param control board and output that switch it, where the breaker begins here
     * @param controlWas those before
     * @param changes where what is here came from, and where what was here went
     */
    public record Position(
            int number,
            String line,
            String now,
            String first,
            String was,
            String breaker,
            String control,
            String controlWas,
            List<String> changes) {
        public Position {
            changes = List.copyOf(changes);
        }

        public boolean isChanged() {
            return !now.equals(was);
        }

        /** Whether its lead is on another output than before. */
        public boolean isControlChanged() {
            return !control.equals(controlWas);
        }

        public boolean isEmpty() {
            return now.equals(EMPTY);
        }
    }

    /** Whether a breaker comes, goes or is another. */
    boolean isOtherBreakers() {
        return positions.stream().anyMatch(Position::isChanged);
    }

    /** Whether anything is to be drawn in ink. */
    boolean isOther() {
        return positions.stream().anyMatch(each -> each.isChanged() || each.isControlChanged());
    }
}
