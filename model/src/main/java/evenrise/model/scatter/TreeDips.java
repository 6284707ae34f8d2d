package evenrise.model.scatter;

import evenrise.model.electrical.source.UnitDips;
import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Through a tree: which voltages a load that closes is felt at, and what each ampere of each load takes from them. */
final class TreeDips {
    /** Of each voltage the node. */
    final int[] nodes;

    /** By load and voltage. */
    final double[][] percentPerAmp;

    /** By load: voltages of its panel and of all that feeds it. */
    final int[][] felt;

    private TreeDips(int[] nodes, double[][] percentPerAmp, int[][] felt) {
        this.nodes = nodes;
        this.percentPerAmp = percentPerAmp;
        this.felt = felt;
    }

    /** Of no voltages where nothing is known. */
    static TreeDips of(Layout layout, TrialLoads loads, Optional<UnitDips> units) {
        List<String> names = units.map(UnitDips::nodes).orElse(List.of());
        int[] nodes = names.stream().mapToInt(loads.nodes::indexOf).toArray();
        double[][] percent = new double[loads.count()][];
        int[][] felt = new int[loads.count()][];
        Map<List<Integer>, double[]> alike = new HashMap<>();
        Map<Integer, int[]> ways = new HashMap<>();
        for (int i = 0; i < percent.length; i++) {
            int panel = loads.panel[i];
            int phases = loads.phases[i];
            percent[i] = alike.computeIfAbsent(
                    List.of(panel, phases),
                    any -> units.map(it -> it.percentPerAmp(loads.nodes.get(panel), phases(phases)))
                            .orElse(new double[0]));
            felt[i] = ways.computeIfAbsent(panel, any -> felt(layout, panel, nodes));
        }
        return new TreeDips(nodes, percent, felt);
    }

    boolean tells(int node) {
        return Arrays.stream(nodes).anyMatch(each -> each == node);
    }

    private static List<Phase> phases(int bits) {
        return Stream.of(Phase.values())
                .filter(phase -> (bits & 1 << phase.ordinal()) != 0)
                .toList();
    }

    private static int[] felt(Layout layout, int panel, int[] nodes) {
        List<Point> points = layout.distribution().points();
        List<Integer> way = Stream.iterate(
                        panel, at -> at >= 0, at -> points.get(at).parent())
                .toList();
        return IntStream.range(0, nodes.length)
                .filter(voltage -> way.contains(nodes[voltage]))
                .toArray();
    }
}
