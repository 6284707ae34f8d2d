package evenrise.model.electrical.source;

import evenrise.model.electrical.LineMatrix;
import evenrise.model.electrical.LineValues;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A plant in the shape of a tree, or of several: sources at the top, feeders, busbars, transformers, panels. Impedances that
 * stand before a point are between its lines, at its own voltage; a transformer turns currents into those that it draws, and
 * voltages the other way by the same numbers (ampere-turns are equal, no power is lost).
 */
public final class TreePlant implements Plant {
    private final List<Point> points = new ArrayList<>();
    private final Map<String, Integer> places = new HashMap<>();
    private final Map<String, List<String>> carrying = new HashMap<>();
    private final List<Optional<LineMatrix>> across = new ArrayList<>();
    private final int[] parents;
    private final double[][] flatBefore;
    private final double[][] flatDrawn;
    private final double[][] flatAcross;
    private final LineMatrix[][] transfers;
    private final boolean[][] areTransfersKnown;

    /**
     * One point.
     *
     * @param parent its name; empty for a source
     * @param drawn what a transformer draws from its parent's lines for the currents of its own; empty at the same voltage
     * @param nominal voltages where nothing draws
     * @param before between its lines and what feeds it, at its own voltage
     */
    public record Point(
            String name,
            Optional<String> parent,
            Optional<LineMatrix> drawn,
            LineValues nominal,
            LineMatrix before,
            boolean isPanel) {}

    /** @param topDown each after what feeds it */
    public TreePlant(List<Point> topDown) {
        for (Point each : topDown) {
            places.put(each.name(), points.size());
            points.add(each);
            List<String> path = new ArrayList<>(List.of(each.name()));
            if (each.drawn().isEmpty()) {
                each.parent().ifPresent(parent -> path.addAll(carrying.get(parent)));
            }
            carrying.put(each.name(), List.copyOf(path));
            across.add(each.drawn().map(LineMatrix::adjoint));
        }
        int count = points.size();
        this.parents = points.stream()
                .mapToInt(each -> each.parent().map(places::get).orElse(-1))
                .toArray();
        this.flatBefore =
                points.stream().map(each -> FlatLines.of(each.before())).toArray(double[][]::new);
        this.flatDrawn = points.stream()
                .map(each -> each.drawn().map(FlatLines::of).orElse(null))
                .toArray(double[][]::new);
        this.flatAcross = across.stream()
                .map(each -> each.map(FlatLines::of).orElse(null))
                .toArray(double[][]::new);
        this.transfers = new LineMatrix[count][count];
        this.areTransfersKnown = new boolean[count][count];
    }

    @Override
    public Collection<String> nodes() {
        return points.stream().map(Point::name).toList();
    }

    @Override
    public LineValues nominal(String node) {
        return point(node).nominal();
    }

    @Override
    public List<String> carrying(String node) {
        return carrying.get(node);
    }

    @Override
    public List<String> zones(String node) {
        return List.of(node);
    }

    @Override
    public boolean touches(String zone, String panel) {
        return transfer(zone, panel).isPresent();
    }

    @Override
    public LineValues drop(String zone, String panel, LineValues lines) {
        return transfer(zone, panel).orElse(LineMatrix.ZERO).times(lines);
    }

    @Override
    public boolean isPanel(String node) {
        return point(node).isPanel();
    }

    @Override
    public Drops drops() {
        Map<Integer, LineValues> sums = new LinkedHashMap<>();
        return new Drops() {
            @Override
            public void add(String panel, LineValues lines) {
                sums.merge(places.get(panel), lines, LineValues::plus);
            }

            @Override
            public LineValues at(String node) {
                int place = places.get(node);
                LineValues drop = LineValues.ZERO;
                for (Map.Entry<Integer, LineValues> each : sums.entrySet()) {
                    LineMatrix transfer = transfer(place, each.getKey());
                    drop = transfer == null ? drop : drop.plus(transfer.times(each.getValue()));
                }
                return drop;
            }
        };
    }

    /** Time: linear in the points. */
    @Override
    public RadialPlant.Voltages voltages(Map<String, RadialPlant.Draw> draws) {
        int count = points.size();
        LineValues[] amps = new LineValues[count];
        LineMatrix[] siemens = new LineMatrix[count];
        LineMatrix[] reduced = new LineMatrix[count];
        for (int i = 0; i < count; i++) {
            RadialPlant.Draw own = draws.get(points.get(i).name());
            amps[i] = own == null ? LineValues.ZERO : own.amps();
            siemens[i] = own == null ? LineMatrix.ZERO : own.siemens();
        }
        for (int i = count - 1; i >= 0; i--) {
            LineMatrix before = points.get(i).before();
            boolean isPlain = siemens[i] == LineMatrix.ZERO || siemens[i].equals(LineMatrix.ZERO);
            // V = (1 + Z·Y)⁻¹·(Vup − Z·J), so that I = J + Y·V
            reduced[i] =
                    isPlain ? null : before.times(siemens[i]).plusIdentity().inverse();
            int up = parents[i];
            if (up < 0) {
                continue;
            }
            LineValues known = amps[i];
            LineMatrix seen = siemens[i];
            if (!isPlain) {
                seen = siemens[i].times(reduced[i]);
                known = known.minus(seen.times(before.times(amps[i])));
            }
            if (points.get(i).drawn().isPresent()) {
                LineMatrix drawn = points.get(i).drawn().get();
                known = drawn.times(known);
                seen = isPlain ? seen : drawn.times(seen).times(across.get(i).orElseThrow());
            }
            amps[up] = amps[up].plus(known);
            siemens[up] = isPlain ? siemens[up] : siemens[up].plus(seen);
        }
        Map<String, LineValues> volts = new LinkedHashMap<>();
        for (int i = 0; i < count; i++) {
            Point it = points.get(i);
            LineValues above = it.parent().map(volts::get).orElse(it.nominal());
            LineValues arriving = arriving(i, above).minus(it.before().times(amps[i]));
            volts.put(it.name(), reduced[i] == null ? arriving : reduced[i].times(arriving));
        }
        return new RadialPlant.Voltages(volts.get(points.get(0).name()), volts);
    }

    /** See {@link TreeResponse}. */
    @Override
    public Response response(Map<String, LineValues> amps, RadialPlant.Voltages steady, List<String> panels) {
        return new TreeResponse(this, steady, panels);
    }

    int place(String node) {
        return places.get(node);
    }

    /** Of a source -1. */
    int parent(int place) {
        return parents[place];
    }

    /** The impedance before a point. */
    double[] before(int place) {
        return flatBefore[place];
    }

    /** What a transformer draws for what its side gives; null at the same voltage. */
    double[] drawn(int place) {
        return flatDrawn[place];
    }

    /** What it makes of its parent's voltages; null at the same voltage. */
    double[] across(int place) {
        return flatAcross[place];
    }

    /** What a point has of its parent's voltages. */
    LineValues arriving(int place, LineValues above) {
        return across.get(place).isPresent() ? across.get(place).get().times(above) : above;
    }

    private Optional<LineMatrix> transfer(String node, String panel) {
        return Optional.ofNullable(transfer(places.get(node), places.get(panel)));
    }

    /** Volts at a point for amperes at a panel, worked out once; null where they share no source. */
    private LineMatrix transfer(int at, int from) {
        if (!areTransfersKnown[at][from]) {
            transfers[at][from] =
                    transferred(points.get(at).name(), points.get(from).name()).orElse(null);
            areTransfersKnown[at][from] = true;
        }
        return transfers[at][from];
    }

    private Optional<LineMatrix> transferred(String node, String panel) {
        List<Integer> ofNode = way(node);
        List<Integer> ofPanel = way(panel);
        if (!ofNode.get(0).equals(ofPanel.get(0))) {
            return Optional.empty();
        }
        int shared = 0;
        while (shared < ofNode.size()
                && shared < ofPanel.size()
                && ofNode.get(shared).equals(ofPanel.get(shared))) {
            shared++;
        }
        LineMatrix sum = LineMatrix.ZERO;
        for (int i = 0; i < shared; i++) {
            LineMatrix before = points.get(ofNode.get(i)).before();
            sum = sum.plus(drawnAt(ofNode, i).adjoint().times(before).times(drawnAt(ofPanel, i)));
        }
        return Optional.of(sum);
    }

    /** Currents at the place of a way for those at its end. */
    private LineMatrix drawnAt(List<Integer> way, int place) {
        LineMatrix product = LineMatrix.ZERO.plusIdentity();
        for (int i = place + 1; i < way.size(); i++) {
            Optional<LineMatrix> drawn = points.get(way.get(i)).drawn();
            product = drawn.isPresent() ? product.times(drawn.get()) : product;
        }
        return product;
    }

    /** From the source to a point. */
    private List<Integer> way(String node) {
        List<Integer> way = new ArrayList<>();
        for (Optional<String> at = Optional.of(node);
                at.isPresent();
                at = point(at.get()).parent()) {
            way.add(0, places.get(at.get()));
        }
        return way;
    }

    private Point point(String node) {
        return points.get(places.get(node));
    }
}
