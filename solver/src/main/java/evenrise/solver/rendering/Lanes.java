package evenrise.solver.rendering;

import evenrise.solver.document.Document;
import evenrise.solver.document.Plain;
import evenrise.solver.document.PlayedLoad;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Every load's switch-on over time, below the curves and in their times: a lane a board, or a panel where boards are
 * many. What comes on first is on top.
 *
 * @param of what a lane stands for: board or panel
 * @param laneHeight in the drawing's units
 */
public record Lanes(String of, double laneHeight, List<Lane> lanes) {
    private static final int MOST_BOARDS = 48;
    private static final double MOST_HEIGHT = 480;
    private static final double LANE_HEIGHT = 15;
    private static final double LEGIBLE_HEIGHT = 9;
    private static final int LONGEST_LABEL = 13;

    /**
     * @param label empty where lanes are too low for letters
     * @param marks for each system by its place, or -1 for one command of all, an SVG path with a stroke at each switch-on
     */
    public record Lane(String id, String label, double bottom, Map<Integer, String> marks) {}

    static Lanes of(Document document) {
        List<PlayedLoad> switched = document.loads().stream()
                .filter(each -> each.on() >= 0)
                .sorted(Comparator.comparingDouble(PlayedLoad::on))
                .toList();
        boolean isByBoard = switched.stream().map(PlayedLoad::board).distinct().count() <= MOST_BOARDS;
        Function<PlayedLoad, String> lane = isByBoard ? PlayedLoad::board : PlayedLoad::panel;
        Map<String, List<PlayedLoad>> byLane = switched.stream()
                .collect(Collectors.groupingBy(lane, java.util.LinkedHashMap::new, Collectors.toList()));
        double height = Math.min(LANE_HEIGHT, MOST_HEIGHT / Math.max(1, byLane.size()));
        Plot plot = Plot.of(document);
        List<Lane> lanes = new ArrayList<>();
        byLane.forEach((id, loads) -> {
            double top = height * lanes.size();
            Map<Integer, String> marks = loads.stream()
                    .collect(Collectors.groupingBy(
                            PlayedLoad::system,
                            TreeMap::new,
                            Collectors.mapping(
                                    load -> String.format(
                                            Locale.ROOT,
                                            "M%.1f %.1fv%.1f",
                                            plot.x(load.on()),
                                            top + height * 0.15,
                                            height * 0.7),
                                    Collectors.joining())));
            String label = height < LEGIBLE_HEIGHT ? "" : label(Plain.text(id, 400));
            lanes.add(new Lane(id, label, top + height, marks));
        });
        return new Lanes(isByBoard ? "board" : "panel", height, lanes);
    }

    /** Ids of one house often begin alike: what is cut is the middle. */
    private static String label(String id) {
        int end = id.length();
        return end <= LONGEST_LABEL ? id : id.substring(0, 5) + "…" + id.substring(end - LONGEST_LABEL + 6);
    }

    boolean isByBoard() {
        return of.equals("board");
    }

    /** Of all lanes. */
    public double height() {
        return laneHeight * lanes.size() + 1;
    }

    /** In the drawing's units, to place what the template draws. */
    public int width() {
        return Plot.WIDTH;
    }

    public int left() {
        return Plot.LEFT;
    }

    public int right() {
        return Plot.WIDTH - Plot.RIGHT;
    }
}
