package evenrise.solver.bounds;

import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.OfferedTimes;
import evenrise.model.project.Project;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Until when a sequence may last: as long as it is allowed to, or as long as the longest chain of boards can take. */
final class BoardEnds {
    private final Map<String, BoardType> types = new HashMap<>();
    private final Map<String, Board> boards = new HashMap<>();

    private BoardEnds(Project project) {
        project.boardTypes().forEach(type -> types.put(type.id(), type));
        project.boards().forEach(board -> boards.put(board.id(), board));
    }

    /** Latest time at which a load can come on in a plan that keeps every rule. Time: boards × the longest chain. */
    static double horizonSeconds(Project project) {
        double allowed =
                project.maxDurationSeconds().orElse(Double.POSITIVE_INFINITY) + BoundedProject.FORGIVEN_SECONDS;
        BoardEnds ends = new BoardEnds(project);
        double possible =
                project.boards().stream().mapToDouble(ends::chainSeconds).max().orElse(0);
        return Math.min(allowed, possible);
    }

    private double chainSeconds(Board last) {
        double seconds = 0;
        int walked = 0;
        for (Board each = last; each != null && walked <= boards.size(); walked++) {
            seconds += longestSeconds(types.get(each.type()));
            each = each.after().map(boards::get).orElse(null);
        }
        return seconds;
    }

    private static double longestSeconds(BoardType type) {
        return type.isTimedByOutput()
                ? most(type.timesSeconds().map(OfferedTimes::all).orElse(List.of()))
                : most(type.startDelaySeconds()) + (type.outputs() - 1) * most(type.stepSeconds());
    }

    private static double most(List<Double> seconds) {
        return seconds.stream().mapToDouble(each -> each).max().orElse(0);
    }
}
