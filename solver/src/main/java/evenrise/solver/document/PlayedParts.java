package evenrise.solver.document;

import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLoads.Seen;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * How much of a pole's current is on each phase of each node: the same for all loads of one panel on the same phases.
 *
 * @param nodes of each such way in, its places among the nodes that it reaches
 * @param parts of each of those nodes, in the order of {@code nodes}, one a phase of the document
 */
public record PlayedParts(List<List<Integer>> nodes, List<List<List<Double>>> parts) {

    /** The ways in of a layout, and which one each load has. */
    record Ways(PlayedParts parts, Map<String, Integer> ofLoad) {}

    static Ways of(Layout layout) {
        List<Phase> phases = NodeTables.phases(layout);
        Map<String, Integer> places = new LinkedHashMap<>();
        Map<String, Integer> ofLoad = new HashMap<>();
        List<List<Integer>> nodes = new ArrayList<>();
        List<List<List<Double>>> parts = new ArrayList<>();
        for (Placement each : layout.placements()) {
            if (each.fits()) {
                ofLoad.put(each.id(), places.computeIfAbsent(key(each), any -> {
                    nodes.add(new ArrayList<>());
                    parts.add(new ArrayList<>());
                    return nodes.size() - 1;
                }));
            }
        }
        for (Point point : layout.distribution().points()) {
            for (Seen seen : layout.nodeLoads().seen(point.index())) {
                int way = ofLoad.get(seen.placement().id());
                if (!nodes.get(way).contains(point.index())) {
                    nodes.get(way).add(point.index());
                    parts.get(way)
                            .add(phases.stream()
                                    .map(phase -> seen.parts()[phase.ordinal()])
                                    .toList());
                }
            }
        }
        return new Ways(new PlayedParts(nodes, parts), ofLoad);
    }

    private static String key(Placement each) {
        return each.phases().stream().map(Phase::name).sorted().collect(Collectors.joining()) + " "
                + each.assignment().panel();
    }
}
