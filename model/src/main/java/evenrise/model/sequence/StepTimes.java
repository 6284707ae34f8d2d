package evenrise.model.sequence;

import evenrise.model.plan.BoardSetting;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.PassesOn;
import evenrise.model.project.Project;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * When each output of each board comes on, counted from the command. A board that follows another begins when the last
 * used output of that one comes on, of outputs with times of their own the latest; where that one passes on after all, when
 * its last output would; or when that one begins where it has none in use. Times are nominal: no tolerance.
 */
public final class StepTimes {
    private final Map<String, Board> boards = new LinkedHashMap<>();
    private final Map<String, BoardSetting> settings;
    private final Map<String, Integer> lastUsed;
    private final Map<String, BoardType> types = new HashMap<>();
    private final Map<String, Map<Integer, Double>> asked;
    private final Map<String, Double> begins = new HashMap<>();
    private final double durationSeconds;

    /**
     * Time: boards; an unused output takes its step like any other.
     *
     * @param settings one for each board of the project
     * @param lastUsed highest used output, for each board that has any
     */
    public StepTimes(Project project, Map<String, BoardSetting> settings, Map<String, Integer> lastUsed) {
        this(project, settings, lastUsed, Map.of());
    }

    /**
     * The same with boards whose outputs have times of their own.
     *
     * @param asked the on time that a plan states for each used output of each of those boards, from the command
     */
    public StepTimes(
            Project project,
            Map<String, BoardSetting> settings,
            Map<String, Integer> lastUsed,
            Map<String, Map<Integer, Double>> asked) {
        this.asked = asked;
        Map<String, BoardType> byId = new HashMap<>();
        project.boardTypes().forEach(type -> byId.put(type.id(), type));
        project.boards().forEach(board -> types.put(board.id(), byId.get(board.type())));
        this.settings = Map.copyOf(settings);
        this.lastUsed = Map.copyOf(lastUsed);
        project.boards().forEach(board -> boards.put(board.id(), board));
        boards.values().forEach(this::begin);
        this.durationSeconds = lastUsed.keySet().stream()
                .mapToDouble(this::lastOnSeconds)
                .max()
                .orElse(0);
    }

    /** When the board begins to count its start delay. */
    public double beginSeconds(String board) {
        return begins.get(board);
    }

    /** When output {@code output}, counted from 1, comes on. */
    public double onSeconds(String board, int output) {
        BoardSetting setting = settings.get(board);
        double begin = begins.get(board);
        if (isTimedByOutput(board)) {
            double wanted = asked.getOrDefault(board, Map.of()).getOrDefault(output, 0.0);
            return begin + types.get(board).timesSeconds().orElseThrow().nearestSeconds(wanted - begin);
        }
        return begin + setting.delaySeconds() + (output - 1) * setting.betweenSeconds();
    }

    /** When the boards that follow it begin. */
    public double finishSeconds(String board) {
        boolean passesOnAfterAll =
                types.get(board) != null && types.get(board).passesOn() == PassesOn.ALL && !isTimedByOutput(board);
        return passesOnAfterAll && lastUsed.containsKey(board)
                ? onSeconds(board, types.get(board).outputs())
                : lastOnSeconds(board);
    }

    /** When the last of the board's used outputs comes on, or when the board begins where it has none in use. */
    private double lastOnSeconds(String board) {
        Integer last = lastUsed.get(board);
        if (last == null) {
            return begins.get(board);
        }
        return isTimedByOutput(board)
                ? asked.getOrDefault(board, Map.of()).keySet().stream()
                        .mapToDouble(output -> onSeconds(board, output))
                        .max()
                        .orElseGet(() -> onSeconds(board, last))
                : onSeconds(board, last);
    }

    private boolean isTimedByOutput(String board) {
        return types.get(board) != null && types.get(board).isTimedByOutput();
    }

    /** When the last used output of all boards comes on; 0 where none is in use. */
    public double durationSeconds() {
        return durationSeconds;
    }

    /** When what came on at {@code onSeconds} goes off, counted from the off command: the mirror image. */
    public double offSeconds(double onSeconds) {
        return durationSeconds - onSeconds;
    }

    /** Walks up the chain of boards to one whose begin is known, then down again: no recursion, chains may be long. */
    private void begin(Board board) {
        Deque<Board> waiting = new ArrayDeque<>();
        Map<String, Board> seen = new HashMap<>();
        Optional<Board> next = Optional.of(board);
        while (next.isPresent()
                && !begins.containsKey(next.get().id())
                && seen.put(next.get().id(), next.get()) == null) {
            waiting.push(next.get());
            next = next.get().after().map(boards::get);
        }
        for (Board each : waiting) {
            Optional<String> prior = each.after().filter(begins::containsKey);
            begins.put(each.id(), prior.map(this::finishSeconds).orElse(0.0));
        }
    }
}
