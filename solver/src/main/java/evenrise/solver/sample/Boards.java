package evenrise.solver.sample;

import evenrise.model.plan.BoardSetting;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The board types of a drawn venue, and the boards of one panel with the settings of the layout. */
final class Boards {
    static final List<BoardType> TYPES = List.of(type("six", 6, 330), type("ten", 10, 480), type("eighteen", 18, 790));

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

    private static BoardType type(String id, int outputs, double price) {
        return BoardType.builder()
                .id(id)
                .outputs(outputs)
                .startDelaySeconds(List.of(
                        0.0, 0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 11.0, 12.0, 12.5, 13.0, 13.5, 14.0,
                        15.0, 16.0, 18.0, 20.0, 22.0, 24.0, 26.0, 28.0, 30.0, 33.0, 36.0))
                .stepSeconds(List.of(0.25, 0.5, 1.0, 2.0))
                .price(price)
                .build();
    }

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
    Boards(int index, String panel, List<String> reaches, PanelMix counts) {
        double turn = TURN_SECONDS * (index % TURNS);
        add(hold(panel), "ten", panel, reaches, Optional.empty(), turn);
        int dropOutputs = PanelMix.MOST_DISPLAYS + counts.amplifiers();
        add(
                drop(panel),
                dropOutputs > 10 ? "eighteen" : "ten",
                panel,
                reaches,
                Optional.empty(),
                DROP_DELAY_SECONDS + turn);
        if (counts.calls() > 0) {
            String type = counts.calls() > 6 ? "ten" : "six";
            add(call(panel), type, panel, List.of(panel), Optional.of(hold(panel)), CALL_DELAY_SECONDS);
        }
    }

    private void add(String id, String type, String panel, List<String> reaches, Optional<String> after, double delay) {
        boards.add(Board.builder()
                .id(id)
                .type(type)
                .panel(panel)
                .reaches(reaches)
                .after(after)
                .build());
        settings.add(new BoardSetting(id, delay, STEP_SECONDS));
    }
}
