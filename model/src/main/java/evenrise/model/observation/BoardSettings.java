package evenrise.model.observation;

import evenrise.model.plan.BoardSetting;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Boards that are set otherwise than planned: one after another, while that makes everything fit much better. */
final class BoardSettings {
    /** A board of which fewer starts are odd is not looked at. */
    private static final int FEWEST_ODD = 2;

    /** What comes so many standard deviations from its time, and no further, may be in time. */
    private static final double NEAR = 4;

    private final Map<String, BoardType> types = new HashMap<>();
    private final List<BoardSetting> found = new ArrayList<>();
    private MatchedStarts reading;

    BoardSettings(MatchedStarts first) {
        reading = first;
        first.layout().project().boardTypes().forEach(type -> types.put(type.id(), type));
        first.layout().project().boards().stream()
                .filter(board -> oddOf(board) >= FEWEST_ODD)
                .forEach(this::look);
    }

    private int oddOf(Board board) {
        int odd = 0;
        for (int i = 0; i < reading.expected().size(); i++) {
            odd += reading.isOdd(i) && reading.expected().get(i).boards().contains(board.id()) ? 1 : 0;
        }
        return odd;
    }

    private void look(Board board) {
        BoardSetting planned = reading.layout().setting(board);
        if (planned.startDelaySeconds().isEmpty()) {
            return;
        }
        MatchedStarts best = null;
        BoardSetting bestSetting = planned;
        double least = reading.match().cost() - Observer.WORTH_BLAMING;
        for (double delay : types.get(board.type()).startDelaySeconds()) {
            for (double step : types.get(board.type()).stepSeconds()) {
                BoardSetting setting = new BoardSetting(board.id(), delay, step);
                Layout layout = ExpectedStart.withSetting(reading.layout(), setting);
                if (!setting.equals(planned) && mayBe(layout, board)) {
                    MatchedStarts other = reading.beside(layout);
                    if (other.match().cost() < least) {
                        least = other.match().cost();
                        best = other;
                        bestSetting = setting;
                    }
                }
            }
        }
        if (best != null) {
            reading = best;
            found.add(bestSetting);
        }
    }

    /** Whether half of a board's starts are seen as planned: of others no whole match is sought, which would take long. */
    private boolean mayBe(Layout layout, Board board) {
        int starts = 0;
        int seen = 0;
        for (ExpectedStart each : reading.sight().expected(layout)) {
            if (each.boards().contains(board.id())) {
                starts++;
                seen += isSeen(each) ? 1 : 0;
            }
        }
        return 2 * seen >= starts;
    }

    private boolean isSeen(ExpectedStart expected) {
        double within = NEAR * reading.sight().sigmaSeconds();
        for (int j = 0; j < reading.recorded().size(); j++) {
            double at = reading.planSeconds(j);
            if (Math.abs(at - expected.seconds()) <= within) {
                Likeness.Best like = reading.sight()
                        .likeness()
                        .of(expected, reading.recorded().get(j), at);
                if (like.cost() < Likeness.MISSING
                        && (like.explanation() == Likeness.Explanation.AS_PLANNED
                                || like.explanation() == Likeness.Explanation.OTHER_SIZE)) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Everything beside the plan with boards as they seem to be set. */
    MatchedStarts reading() {
        return reading;
    }

    List<BoardSetting> found() {
        return found;
    }
}
