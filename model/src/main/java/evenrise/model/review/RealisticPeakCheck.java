package evenrise.model.review;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.Phasor;
import evenrise.model.electrical.source.Plant;
import evenrise.model.electrical.source.SharedSource;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.RangePeak;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The peak that the source's and the feeders' impedance leaves of each node's peak, at nominal voltage and over the voltage range. */
final class RealisticPeakCheck implements ElectricalCheck {
    private static final String ID = "realistic-peak";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public boolean judges() {
        return false;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        Optional<SourceModel> model = SourceModel.of(layout.project());
        Optional<Impedance> source = model.flatMap(SourceModel::forDips);
        List<Point> known = Feeders.behindKnownSources(layout);
        if (known.isEmpty()) {
            String needs = model.map(SourceModel::needs).orElse("electrical.source");
            findings.notChecked(ID, List.of(NodeFigures.SUPPLY), needs);
            return;
        }
        Map<String, Impedance> feeders = Feeders.impedances(layout);
        Plant plant = Feeders.behindSources(layout);
        for (RangePeak peak : layout.peakBasis().peaks()) {
            Point point = layout.distribution().point(peak.node()).orElseThrow();
            if (!known.contains(point)) {
                continue;
            }
            double crestVolts = Math.sqrt(2) * point.lineToNeutralVolts();
            double mostVolts = crestVolts * layout.peakBasis().mostVoltagePercent() / 100;
            Impedance path = Feeders.isStar(layout)
                    ? source.get().plus(feeders.getOrDefault(peak.node(), Impedance.ZERO))
                    : path(plant, point);
            findings.add(new Quantity(peak.node(), "peak inrush at nominal voltage", peak.nominalAmps(), "A"));
            findings.add(new Quantity(
                    peak.node(),
                    "peak inrush at nominal voltage, behind the source",
                    SharedSource.crestAmps(peak.nominalAmps(), crestVolts, path),
                    "A"));
            findings.add(new Quantity(
                    peak.node(),
                    "peak inrush over the voltage range, behind the source",
                    SharedSource.crestAmps(peak.rangeAmps(), mostVolts, path),
                    "A"));
        }
    }

    /** What balanced currents meet on the way to a point, sources and transformers with it. */
    private static Impedance path(Plant plant, Point point) {
        LineValues even = LineValues.nominal(point.system(), 1);
        Phasor drop = plant.dropAt(point.id(), point.id(), even).a();
        return new Impedance(drop.real(), drop.imaginary());
    }
}
