package evenrise.solver.rendering;

import evenrise.model.file.Json;
import evenrise.solver.document.Document;
import evenrise.solver.document.Envelope;
import evenrise.solver.document.PlayedLoad;
import evenrise.solver.document.PlayedNode;
import evenrise.solver.document.PlayedParts;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * What the page's script needs.
 *
 * @param lanesOf what a lane of switch-ons stands for
 * @param roles in the order in which they come on
 * @param chains of lanes
 * @param systems whose commands have clocks of their own; none where there is one clock
 * @param system that is played first, by its place
 * @param earlier current of the supply by an earlier plan, one a system; none where there is none
 * @param ways by which currents reach the nodes
 */
public record Played(
        double endSeconds,
        double toleranceSeconds,
        Edges plot,
        List<String> phases,
        List<PlayedNode> nodes,
        String lanesOf,
        double laneHeight,
        List<String> lanes,
        List<String> roles,
        List<List<Integer>> chains,
        List<String> systems,
        int system,
        PlayedParts ways,
        List<Earlier> earlier,
        Columns loads) {

    /** @param phases in the supply's order: seconds and amperes of the corners, in turns */
    public record Earlier(int system, List<List<Double>> phases) {}

    /** Of the drawing, in its own units. */
    public record Edges(int width, int height, int left, int right, int top, int bottom) {}

    /** A list for each property instead of a record for each load: a fraction of the size where loads are many. */
    public record Columns(
            List<String> id,
            List<String> name,
            List<String> role,
            List<String> group,
            List<String> panel,
            List<String> slots,
            List<String> phases,
            List<String> board,
            List<Double> onSeconds,
            List<Double> baseAmps,
            List<Double> excessAmps,
            List<Double> halfLifeSeconds,
            List<Double> runningAmps,
            List<Integer> system,
            List<Integer> way,
            List<Double> settleSeconds,
            List<Boolean> drops) {

        static Columns of(List<PlayedLoad> loads) {
            return new Columns(
                    each(loads, PlayedLoad::id),
                    each(loads, PlayedLoad::name),
                    each(loads, PlayedLoad::role),
                    each(loads, PlayedLoad::group),
                    each(loads, PlayedLoad::panel),
                    each(loads, PlayedLoad::slots),
                    each(loads, PlayedLoad::phases),
                    each(loads, PlayedLoad::board),
                    each(loads, PlayedLoad::on),
                    each(loads, PlayedLoad::base),
                    each(loads, PlayedLoad::excess),
                    each(loads, PlayedLoad::half),
                    each(loads, PlayedLoad::running),
                    each(loads, PlayedLoad::system),
                    each(loads, PlayedLoad::way),
                    each(loads, PlayedLoad::settle),
                    each(loads, PlayedLoad::drops));
        }

        private static <T> List<T> each(List<PlayedLoad> loads, Function<PlayedLoad, T> property) {
            return loads.stream().map(property).toList();
        }
    }

    static Played of(Document document, Lanes lanes) {
        return new Played(
                Plot.of(document).endSeconds(),
                document.toleranceSeconds(),
                new Edges(
                        Plot.WIDTH,
                        Plot.HEIGHT,
                        Plot.LEFT,
                        Plot.WIDTH - Plot.RIGHT,
                        Plot.TOP,
                        Plot.HEIGHT - Plot.BOTTOM),
                document.phaseNames(),
                document.playedNodes(),
                lanes.of(),
                lanes.laneHeight(),
                lanes.lanes().stream().map(Lanes.Lane::id).toList(),
                PlayedLoad.ROLES,
                chains(document, lanes),
                document.systems(),
                started(document),
                document.parts(),
                earlier(document),
                Columns.of(document.loads()));
    }

    /** Lanes of boards that start each other: the earlier, the later. */
    private static List<List<Integer>> chains(Document document, Lanes lanes) {
        List<String> ids = lanes.lanes().stream().map(Lanes.Lane::id).toList();
        return lanes.isByBoard()
                ? document.tables().settings().rows().stream()
                        .filter(use -> use.after().filter(ids::contains).isPresent() && ids.contains(use.board()))
                        .map(use -> List.of(ids.indexOf(use.after().orElseThrow()), ids.indexOf(use.board())))
                        .toList()
                : List.of();
    }

    private static List<Earlier> earlier(Document document) {
        return document.curves(document.supply().node()).stream()
                .flatMap(now -> document.revised().before(now).stream())
                .map(each -> new Earlier(
                        each.system().map(document.systems()::indexOf).orElse(0),
                        each.phases().stream().map(Played::corners).toList()))
                .toList();
    }

    private static List<Double> corners(Envelope phase) {
        List<Double> corners = new ArrayList<>();
        for (int i = 0; i < phase.seconds().size(); i++) {
            corners.add(Math.rint(1e4 * phase.seconds().get(i)) / 1e4);
            corners.add(Math.rint(1e2 * phase.amps().get(i)) / 1e2);
        }
        return corners;
    }

    /** The system that the page plays first: the one that makes most at the supply. */
    static int started(Document document) {
        return document.supply().system().map(document.systems()::indexOf).orElse(0);
    }

    /** A script element ends at its own end tag alone, so no name may hold one. */
    String json() {
        return Json.compact(this).replace("<", "\\u003c");
    }
}
