package evenrise.model.electrical.source;

import evenrise.model.electrical.LineMatrix;
import evenrise.model.electrical.LineValues;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * What impedances at some panels of a tree change. They are a circuit of its own, in which each draws what it would from the
 * steady voltage and from the change: only what lies between them and their sources is solved, and what these ways are is
 * found once for all sets of impedances. Time for a set: linear in the points of the ways.
 */
final class TreeResponse implements Plant.Response {
    private static final int VALUES = FlatLines.VALUES;
    private static final int MATRIX = FlatLines.MATRIX;

    private final TreePlant plant;
    private final RadialPlant.Voltages steady;

    /** Points of the ways, each after what feeds it, and by point where it stands among them, or -1. */
    private final int[] points;

    private final int[] rows;
    private final int[] ups;
    private final int[] panels;
    private final double[][] steadyVolts;
    private final double[] siemens;
    private final double[] amps;
    private final double[] dropped;
    private final double[] reduced;
    private final double[] seen = new double[MATRIX];
    private final double[] between = new double[MATRIX];
    private final double[] lost = new double[VALUES];

    TreeResponse(TreePlant plant, RadialPlant.Voltages steady, List<String> names) {
        this.plant = plant;
        this.steady = steady;
        TreeSet<Integer> all = new TreeSet<>();
        for (String name : names) {
            for (int at = plant.place(name); at >= 0; at = plant.parent(at)) {
                all.add(at);
            }
        }
        this.points = all.stream().mapToInt(Integer::intValue).toArray();
        this.rows = new int[plant.nodes().size()];
        Arrays.fill(rows, -1);
        for (int row = 0; row < points.length; row++) {
            rows[points[row]] = row;
        }
        this.ups = Arrays.stream(points)
                .map(point -> plant.parent(point) < 0 ? -1 : rows[plant.parent(point)])
                .toArray();
        this.panels = names.stream().mapToInt(name -> rows[plant.place(name)]).toArray();
        this.steadyVolts =
                names.stream().map(name -> FlatLines.of(steady.at(name))).toArray(double[][]::new);
        this.siemens = new double[MATRIX * points.length];
        this.amps = new double[VALUES * points.length];
        this.dropped = new double[VALUES * points.length];
        this.reduced = new double[MATRIX * points.length];
    }

    @Override
    public Function<String, LineValues> to(List<LineMatrix> ofPanels) {
        Arrays.fill(siemens, 0);
        Arrays.fill(amps, 0);
        for (int k = 0; k < panels.length; k++) {
            double[] own = FlatLines.of(ofPanels.get(k));
            FlatLines.add(siemens, MATRIX * panels[k], own, MATRIX);
            FlatLines.apply(own, 0, steadyVolts[k], 0, lost, 0);
            FlatLines.add(amps, VALUES * panels[k], lost, VALUES);
        }
        for (int row = points.length - 1; row >= 0; row--) {
            reduce(row);
            if (ups[row] >= 0) {
                passOn(row);
            }
        }
        double[] volts = new double[VALUES * points.length];
        for (int row = 0; row < points.length; row++) {
            answer(row, volts);
        }
        return node -> steady.at(node).plus(changed(plant.place(node), volts));
    }

    /** V = (1 + Z·Y)⁻¹·(Vup − Z·J), so that I = J + Y·V. */
    private void reduce(int row) {
        double[] before = plant.before(points[row]);
        FlatLines.product(before, 0, siemens, MATRIX * row, between, 0);
        between[0]++;
        between[8]++;
        between[16]++;
        FlatLines.invert(between, reduced, MATRIX * row);
        FlatLines.apply(before, 0, amps, VALUES * row, dropped, VALUES * row);
    }

    /** To what feeds it, as that sees it. */
    private void passOn(int row) {
        FlatLines.product(siemens, MATRIX * row, reduced, MATRIX * row, seen, 0);
        FlatLines.apply(seen, 0, dropped, VALUES * row, lost, 0);
        for (int i = 0; i < VALUES; i++) {
            lost[i] = amps[VALUES * row + i] - lost[i];
        }
        double[] drawn = plant.drawn(points[row]);
        int up = ups[row];
        if (drawn == null) {
            FlatLines.add(amps, VALUES * up, lost, VALUES);
            FlatLines.add(siemens, MATRIX * up, seen, MATRIX);
            return;
        }
        double[] primary = new double[VALUES];
        FlatLines.apply(drawn, 0, lost, 0, primary, 0);
        FlatLines.add(amps, VALUES * up, primary, VALUES);
        FlatLines.product(drawn, 0, seen, 0, between, 0);
        FlatLines.product(between, 0, plant.across(points[row]), 0, seen, 0);
        FlatLines.add(siemens, MATRIX * up, seen, MATRIX);
    }

    private void answer(int row, double[] volts) {
        Arrays.fill(lost, 0);
        if (ups[row] >= 0) {
            double[] across = plant.across(points[row]);
            if (across == null) {
                System.arraycopy(volts, VALUES * ups[row], lost, 0, VALUES);
            } else {
                FlatLines.apply(across, 0, volts, VALUES * ups[row], lost, 0);
            }
        }
        for (int i = 0; i < VALUES; i++) {
            lost[i] -= dropped[VALUES * row + i];
        }
        FlatLines.apply(reduced, MATRIX * row, lost, 0, volts, VALUES * row);
    }

    /** At a point that no impedance draws through, as its source's side sees it. */
    private LineValues changed(int place, double[] volts) {
        if (rows[place] >= 0) {
            return FlatLines.values(volts, VALUES * rows[place]);
        }
        return plant.parent(place) < 0 ? LineValues.ZERO : plant.arriving(place, changed(plant.parent(place), volts));
    }
}
