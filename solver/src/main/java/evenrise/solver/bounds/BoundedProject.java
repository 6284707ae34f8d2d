package evenrise.solver.bounds;

import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.PlantPart;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.rules.Tolerances;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A project as the bounds see it: numbers by index, each load after those that it comes after. */
final class BoundedProject {
    /** What comparisons of times forgive, and what sums of doubles may lose. */
    static final double FORGIVEN_SECONDS = Tolerances.SECONDS + 1e-9;

    final Project project;
    final int phases;
    final double toleranceSeconds;

    /** Bases of unswitched loads, all poles together. */
    final double standingAmps;

    /** Largest base of one pole of an unswitched load; 0 where there is none. */
    final double largestStandingAmps;

    final List<SwitchedLoad> loads = new ArrayList<>();
    final double[] halfLifeSeconds;
    final TimeGrid grid;

    BoundedProject(Project project) {
        if (!PlantPart.of(project).isEmpty()) {
            throw new IllegalArgumentException("no bound is proven with these parts yet");
        }
        this.project = project;
        this.phases = project.supply().system().phases().size();
        this.toleranceSeconds = project.timingToleranceSeconds();
        this.standingAmps = project.loads().stream()
                .filter(load -> !load.switched())
                .mapToDouble(load -> load.poles() * envelope(load).baseAmps())
                .sum();
        this.largestStandingAmps = project.loads().stream()
                .filter(load -> !load.switched())
                .mapToDouble(load -> envelope(load).baseAmps())
                .max()
                .orElse(0);
        List<Load> ordered = Ancestry.ordered(project.loads());
        this.halfLifeSeconds = ordered.stream()
                .mapToDouble(load -> envelope(load).halfLifeSeconds())
                .distinct()
                .toArray();
        Map<Double, Integer> halfLives = new HashMap<>();
        for (double seconds : halfLifeSeconds) {
            halfLives.put(seconds, halfLives.size());
        }
        Map<String, Integer> index = new HashMap<>();
        BoardTimes times = new BoardTimes(project);
        for (Load load : ordered) {
            InrushEnvelope envelope = envelope(load);
            int[] before = load.comesAfter().stream()
                    .filter(index::containsKey)
                    .mapToInt(index::get)
                    .toArray();
            index.put(load.id(), loads.size());
            loads.add(new SwitchedLoad(
                    load.role(),
                    load.poles(),
                    envelope.baseAmps(),
                    envelope.excessAmps(),
                    load.runningAmps(),
                    halfLives.get(envelope.halfLifeSeconds()),
                    load.settleSeconds(),
                    times.firstSeconds(load),
                    before));
        }
        double most = project.maxDurationSeconds().orElse(Double.POSITIVE_INFINITY) + FORGIVEN_SECONDS;
        this.grid = TimeGrid.upTo(Math.min(most, times.lastSeconds()), project);
    }

    /** Whether times that differ differ by more than comparisons forgive, however many of them instants stand for. */
    boolean tellsRolesApart() {
        return SettingGrid.tellsTimesApart(project);
    }

    boolean has(Role role) {
        return loads.stream().anyMatch(load -> load.role() == role);
    }

    private InrushEnvelope envelope(Load load) {
        return InrushEnvelope.of(load, toleranceSeconds);
    }

    /** When boards can switch at all. */
    private static final class BoardTimes {
        private final Map<String, BoardType> types = new HashMap<>();
        private final Map<String, Board> boards = new HashMap<>();
        private final Map<Integer, Double> firstOfOutput = new HashMap<>();

        BoardTimes(Project project) {
            project.boardTypes().forEach(type -> types.put(type.id(), type));
            project.boards().forEach(board -> boards.put(board.id(), board));
        }

        /** Earliest switch-on: the board's least delay, and a least step for each output before a fixed one. */
        double firstSeconds(Load load) {
            int output = load.fixed().output().orElse(1);
            Board fixed = load.fixed().board().map(boards::get).orElse(null);
            if (fixed != null) {
                return firstSeconds(fixed, output);
            }
            return firstOfOutput.computeIfAbsent(
                    output,
                    any -> boards.values().stream()
                            .mapToDouble(board -> firstSeconds(board, any))
                            .min()
                            .orElse(0));
        }

        private double firstSeconds(Board board, int output) {
            BoardType type = types.get(board.type());
            return least(type.startDelaySeconds()) + (output - 1) * least(type.stepSeconds());
        }

        /** Latest switch-on: of any board, the longest its chain can take. */
        double lastSeconds() {
            Map<String, Double> ends = new HashMap<>();
            return boards.values().stream()
                    .mapToDouble(board -> lastSeconds(board, ends))
                    .max()
                    .orElse(0);
        }

        private double lastSeconds(Board board, Map<String, Double> ends) {
            double seconds = 0;
            int walked = 0;
            for (Board each = board; each != null && walked <= boards.size(); walked++) {
                Double known = ends.get(each.id());
                if (known != null) {
                    seconds += known;
                    break;
                }
                BoardType type = types.get(each.type());
                seconds += most(type.startDelaySeconds()) + (type.outputs() - 1) * most(type.stepSeconds());
                each = each.after().map(boards::get).orElse(null);
            }
            ends.put(board.id(), seconds);
            return seconds;
        }

        private static double least(List<Double> seconds) {
            return seconds.stream().mapToDouble(each -> each).min().orElse(0);
        }

        private static double most(List<Double> seconds) {
            return seconds.stream().mapToDouble(each -> each).max().orElse(0);
        }
    }
}
