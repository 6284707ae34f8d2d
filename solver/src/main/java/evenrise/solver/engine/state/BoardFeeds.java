package evenrise.solver.engine.state;

import evenrise.model.project.Board;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Distribution.Point;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The source that feeds each board itself in the end: what the board states, else the panel that houses it. Where a load
 * feeds it, that depends on where this load sits.
 */
final class BoardFeeds {
    private final FeederTree tree;
    private final int[] root;
    private final int[] feeder;
    private final int[][] fedBy;

    BoardFeeds(CompiledProject compiled, Distribution distribution) {
        tree = compiled.tree;
        root = new int[compiled.boardCount];
        feeder = new int[compiled.boardCount];
        for (int board = 0; board < root.length; board++) {
            Board given = compiled.project.boards().get(board);
            Optional<Point> point = given.fedBy().flatMap(distribution::point);
            root[board] = tree.root[point.map(Point::index).orElse(compiled.boardPanel[board] + 1)];
            feeder[board] = point.isPresent()
                    ? CompiledProject.NONE
                    : given.fedBy().map(id -> load(compiled, id)).orElse(CompiledProject.NONE);
        }
        fedBy = new int[compiled.loadCount()][];
        Arrays.setAll(
                fedBy,
                load -> IntStream.range(0, root.length)
                        .filter(board -> feeder[board] == load)
                        .toArray());
    }

    private static int load(CompiledProject compiled, String id) {
        return IntStream.range(0, compiled.loadCount())
                .filter(load -> compiled.loads[load].id().equals(id))
                .findFirst()
                .orElse(CompiledProject.NONE);
    }

    /** Boards that a load feeds. */
    int[] fedBy(int load) {
        return fedBy[load];
    }

    /** Node of the supply or source that feeds a board, as loads sit now. */
    int root(int board, PlanSums sums) {
        Place place = feeder[board] == CompiledProject.NONE ? null : sums.placeOf(feeder[board]);
        return place == null ? root[board] : tree.root[place.panel() + 1];
    }
}
