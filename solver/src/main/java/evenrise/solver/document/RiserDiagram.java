package evenrise.solver.document;

import evenrise.model.project.Board;
import evenrise.model.project.Panel;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * The distribution by place: what stands together in a room or on a level is one block behind the place that feeds it, with
 * its feeders, its boards, and the control leads that leave it. A place that several others feed stands behind each.
 */
final class RiserDiagram {
    private static final String NOTE = "By the places that the project states for its panels, in its own words; for"
            + " supplies and further distribution points it states none. In a place: each panel with the device, the size of a line conductor"
            + " and the length of its feeder, the boards in it, and how many control leads go to which other place.";

    private static final String NOT_STATED = "place not stated";

    /** So that a block and the one behind it stand on one sheet. */
    private static final int MOST_POINTS = 10;

    private static final int MOST_CROSSINGS = 8;
    private static final int MOST_BOARDS = 3;

    private final Layout layout;
    private final List<Point> points;
    private final Map<String, List<Board>> boards;
    private final Map<Integer, RiserPlace> placeOf = new HashMap<>();
    private final Map<List<Object>, RiserPlace> begun = new HashMap<>();
    private final List<RiserPlace> places = new ArrayList<>();
    private final Set<String> ids = new HashSet<>();

    private RiserDiagram(Layout layout) {
        this.layout = layout;
        this.points = layout.distribution().points();
        this.boards = layout.project().boards().stream().collect(Collectors.groupingBy(Board::panel));
    }

    /** None where no panel says where it stands. */
    static Optional<Diagram> of(Layout layout) {
        if (layout.project().panels().stream()
                .allMatch(panel -> panel.location().isEmpty())) {
            return Optional.empty();
        }
        RiserDiagram of = new RiserDiagram(layout);
        Arrays.stream(layout.distribution().topDown()).forEach(of::place);
        List<Diagram.Block> blocks = of.places.stream().map(of::block).toList();
        return Optional.of(new Diagram("riser", "Riser by place", "power", NOTE, blocks));
    }

    private static String location(Optional<Panel> panel) {
        return panel.flatMap(Panel::location).map(String::strip).orElse(NOT_STATED);
    }

    private void place(int at) {
        Point point = points.get(at);
        RiserPlace from = placeOf.get(point.parent());
        String location = location(point.panel());
        boolean isBesideWhatFeedsIt = from != null
                && from.location().equals(location)
                && from.points().size() < MOST_POINTS;
        RiserPlace here = isBesideWhatFeedsIt ? from : behind(from, location);
        here.points().add(point);
        placeOf.put(at, here);
    }

    /** What is fed from one block into the same place stands together, as long as there is room. */
    private RiserPlace behind(RiserPlace from, String location) {
        List<Object> key = from == null ? List.of(location, places.size()) : List.of(from.id(), location);
        RiserPlace here = begun.get(key);
        if (here == null || here.points().size() >= MOST_POINTS) {
            here = new RiserPlace(unused(location), location, Optional.ofNullable(from), new ArrayList<>());
            begun.put(key, here);
            places.add(here);
        }
        return here;
    }

    /** A place may stand on the drawing more than once: blanks behind its name tell them apart and are not seen. */
    private String unused(String name) {
        String id = name;
        while (!ids.add(id)) {
            id += " ";
        }
        return id;
    }

    private Diagram.Block block(RiserPlace place) {
        List<String> lines = new ArrayList<>();
        for (Point point : place.points()) {
            lines.add(fed(point));
            boardsIn(point).ifPresent(lines::add);
        }
        lines.addAll(crossings(place));
        return new Diagram.Block(
                place.id(),
                place.from().isEmpty() ? Diagram.Kind.SOURCE : Diagram.Kind.NODE,
                place.from().map(RiserPlace::id),
                "",
                place.from().isEmpty() ? List.of() : List.of(feeders(place)),
                lines);
    }

    /** Those that come in from the place before; what is fed within a place is told with the rest. */
    private String feeders(RiserPlace place) {
        long count = place.points().stream()
                .filter(point -> !place.equals(placeOf.get(point.parent())))
                .count();
        return count == 1 ? "1 feeder" : count + " feeders";
    }

    /** {@code AMP-1: 120 A, 2 AWG, 40 m}. */
    private String fed(Point point) {
        List<String> parts = new ArrayList<>();
        point.feeder().ifPresent(feeder -> {
            feeder.breakerAmps().ifPresent(amps -> parts.add(Unrounded.amps(amps)));
            feeder.cable()
                    .ifPresent(cable ->
                            parts.add(CableWords.size(cable) + ", " + Unrounded.rated(cable.lengthMetres()) + " m"));
        });
        if (point.isSupply()) {
            parts.add(Unrounded.amps(layout.project().supply().ratedAmps()));
        } else if (parts.isEmpty()) {
            parts.add("feeder not stated");
        }
        return Plain.text(point.id(), 24) + ": " + String.join(", ", parts);
    }

    private Optional<String> boardsIn(Point point) {
        List<String> names = boardsOf(point).stream()
                .map(board -> Plain.text(board.id(), 18))
                .toList();
        if (names.isEmpty()) {
            return Optional.empty();
        }
        int rest = names.size() <= MOST_BOARDS ? 0 : names.size() - MOST_BOARDS + 1;
        String told = String.join(", ", names.subList(0, names.size() - rest));
        return Optional.of(
                (names.size() == 1 ? "board " : "boards ") + told + (rest > 0 ? " and " + rest + " more" : ""));
    }

    private List<Board> boardsOf(Point point) {
        return point.panel()
                .map(panel -> boards.getOrDefault(panel.id(), List.of()))
                .orElse(List.of());
    }

    /** Control leads from the boards here to breakers and contactors in panels of other places. */
    private List<String> crossings(RiserPlace place) {
        Map<String, Integer> leads = new TreeMap<>();
        for (Point point : place.points()) {
            for (Board board : boardsOf(point)) {
                for (Placement each : layout.outputs(board.id()).values()) {
                    String there =
                            location(layout.index().panel(each.assignment().panel()));
                    if (!there.equals(place.location())) {
                        leads.merge(there, 1, Integer::sum);
                    }
                }
            }
        }
        int told = leads.size() <= MOST_CROSSINGS ? leads.size() : MOST_CROSSINGS - 1;
        List<String> lines = new ArrayList<>();
        leads.entrySet().stream()
                .limit(told)
                .forEach(each -> lines.add(words(each.getValue()) + " to " + Plain.text(each.getKey(), 40)));
        if (told < leads.size()) {
            int rest = leads.values().stream()
                    .skip(told)
                    .mapToInt(Integer::intValue)
                    .sum();
            lines.add(words(rest) + " to " + (leads.size() - told) + " other places");
        }
        return lines;
    }

    private static String words(int leads) {
        return leads == 1 ? "1 control lead" : leads + " control leads";
    }
}
