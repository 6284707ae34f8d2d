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
import java.util.TreeMap;
import java.util.function.Function;

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
        Map<String, LineValues> sums = new LinkedHashMap<>();
        return new Drops() {
            @Override
            public void add(String panel, LineValues lines) {
                sums.merge(panel, lines, LineValues::plus);
            }

            @Override
            public LineValues at(String node) {
                LineValues drop = LineValues.ZERO;
                for (Map.Entry<String, LineValues> each : sums.entrySet()) {
                    Optional<LineMatrix> transfer = transfer(node, each.getKey());
                    drop = transfer.isPresent() ? drop.plus(transfer.get().times(each.getValue())) : drop;
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
            above = across.get(i).isPresent() ? across.get(i).get().times(above) : above;
            LineValues arriving = above.minus(it.before().times(amps[i]));
            volts.put(it.name(), reduced[i] == null ? arriving : reduced[i].times(arriving));
        }
        return new RadialPlant.Voltages(volts.get(points.get(0).name()), volts);
    }

    /**
     * What the impedances change is a circuit of its own, in which each draws what it would from the steady voltage and from
     * the change: only what lies between them and the source is solved. Time: linear in that.
     */
    @Override
    public Function<String, LineValues> voltages(
            Map<String, LineValues> amps, RadialPlant.Voltages steady, Map<String, LineMatrix> siemens) {
        Map<Integer, Change> changes = new TreeMap<>();
        siemens.forEach((panel, own) -> {
            Change change = changes.computeIfAbsent(places.get(panel), any -> new Change());
            change.siemens = change.siemens.plus(own);
            change.amps = change.amps.plus(own.times(steady.at(panel)));
            for (int up = parents[places.get(panel)]; up >= 0; up = parents[up]) {
                changes.computeIfAbsent(up, any -> new Change());
            }
        });
        List<Integer> topDown = List.copyOf(changes.keySet());
        for (int k = topDown.size() - 1; k >= 0; k--) {
            int i = topDown.get(k);
            if (parents[i] >= 0) {
                changes.get(i).passOn(points.get(i), across.get(i), changes.get(parents[i]));
            } else {
                changes.get(i).reduce(points.get(i));
            }
        }
        for (int i : topDown) {
            Change change = changes.get(i);
            LineValues above = parents[i] < 0 ? LineValues.ZERO : changes.get(parents[i]).volts;
            above = across.get(i).isPresent() ? across.get(i).get().times(above) : above;
            change.volts =
                    change.reduced.times(above.minus(points.get(i).before().times(change.amps)));
        }
        return node -> steady.at(node).plus(changed(places.get(node), changes));
    }

    /** At a point that no impedance draws through, as its source's side sees it. */
    private LineValues changed(int place, Map<Integer, Change> changes) {
        Change here = changes.get(place);
        if (here != null) {
            return here.volts;
        }
        if (parents[place] < 0) {
            return LineValues.ZERO;
        }
        LineValues above = changed(parents[place], changes);
        return across.get(place).isPresent() ? across.get(place).get().times(above) : above;
    }

    /** At one point: what impedances there and behind it draw. */
    private static final class Change {
        LineMatrix siemens = LineMatrix.ZERO;
        LineValues amps = LineValues.ZERO;
        LineMatrix reduced;
        LineValues volts;

        void reduce(Point point) {
            reduced = point.before().times(siemens).plusIdentity().inverse();
        }

        void passOn(Point point, Optional<LineMatrix> across, Change up) {
            reduce(point);
            LineMatrix seen = siemens.times(reduced);
            LineValues known = amps.minus(seen.times(point.before().times(amps)));
            if (point.drawn().isPresent()) {
                known = point.drawn().get().times(known);
                seen = point.drawn().get().times(seen).times(across.orElseThrow());
            }
            up.amps = up.amps.plus(known);
            up.siemens = up.siemens.plus(seen);
        }
    }

    /** Volts at a point for amperes at a panel, worked out once; empty where they share no source. */
    private Optional<LineMatrix> transfer(String node, String panel) {
        int at = places.get(node);
        int from = places.get(panel);
        if (!areTransfersKnown[at][from]) {
            transfers[at][from] = transferred(node, panel).orElse(null);
            areTransfersKnown[at][from] = true;
        }
        return Optional.ofNullable(transfers[at][from]);
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
