package evenrise.solver.sample;

import evenrise.model.plan.BoardSetting;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The boards of one panel with the settings of the layout. */
final class Boards {
    /** First output of a hold board that is for auxiliary loads; those before are for processing. */
    static final int FIRST_AUXILIARY = PanelMix.MOST_PROCESSING + 1;
    /** First output of a drop board that is for amplifiers; those before are for displays. */
    static final int FIRST_AMPLIFIER = PanelMix.MOST_DISPLAYS + 1;

    private static final double STEP_SECONDS = 2;
    /** Panels start apart, in turns, so that equal outputs of equal boards do not close together. */
    private static final int TURNS = 4;

    private static final double TURN_SECONDS = 0.5;
    private static final double DROP_DELAY_SECONDS = 12;
    private static final double CALL_DELAY_SECONDS = 20;

    final List<Board> boards = new ArrayList<>();
    final List<BoardSetting> settings = new ArrayList<>();
    private final Map<String, Double> ownTimesFrom = new HashMap<>();
    private final Optional<String> system;

    static String hold(String panel) {
        return panel + "-hold";
    }

    static String drop(String panel) {
        return panel + "-drop";
    }

    static String call(String panel) {
        return panel + "-call";
    }

    /** The boards that {@code counts} ask for. */
    Boards(int index, String panel, List<String> reaches, PanelMix counts, BoardKinds kinds, Optional<String> system) {
        this.system = system;
        double turn = TURN_SECONDS * (index % TURNS);
        add(hold(panel), kinds.hold(index), panel, reaches, Optional.empty(), turn);
        BoardType drop = kinds.drop(index, PanelMix.MOST_DISPLAYS + counts.amplifiers());
        add(drop(panel), drop, panel, reaches, Optional.empty(), DROP_DELAY_SECONDS + turn);
        if (counts.calls() > 0) {
            BoardType call = kinds.call(counts.calls());
            add(call(panel), call, panel, List.of(panel), Optional.of(hold(panel)), CALL_DELAY_SECONDS);
        }
    }

    /** When the layout switches an output that has a time of its own; empty where the board's setting says it. */
    OptionalDouble ownSeconds(String board, int output) {
        Double from = ownTimesFrom.get(board);
        return from == null ? OptionalDouble.empty() : OptionalDouble.of(from + (output - 1) * STEP_SECONDS);
    }

    private void add(
            String id, BoardType type, String panel, List<String> reaches, Optional<String> after, double delay) {
        boards.add(Board.builder()
                .id(id)
                .type(type.id())
                .panel(panel)
                .reaches(reaches)
                .after(after)
                .system(system)
                .build());
        if (type.isTimedByOutput()) {
            settings.add(BoardSetting.ofEach(id));
            ownTimesFrom.put(id, delay);
        } else {
            settings.add(new BoardSetting(id, delay, STEP_SECONDS));
        }
    }
}
