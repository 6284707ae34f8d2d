package evenrise.model.review;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.source.SharedSource;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.RangePeak;
import evenrise.model.project.PlantPart;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

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
    public Set<PlantPart> beyond() {
        return Set.of(PlantPart.NODES, PlantPart.FED_FROM);
    }

    @Override
    public void review(Layout layout, Findings findings) {
        Optional<SourceModel> model = SourceModel.of(layout.project());
        Optional<Impedance> source = model.flatMap(SourceModel::forDips);
        if (source.isEmpty()) {
            String needs = model.map(SourceModel::needs).orElse("electrical.source");
            findings.notChecked(ID, List.of(NodeFigures.SUPPLY), needs);
            return;
        }
        double crestVolts = Math.sqrt(2) * layout.project().supply().lineToNeutralVolts();
        double mostVolts = crestVolts * layout.peakBasis().mostVoltagePercent() / 100;
        Map<String, Impedance> feeders = Feeders.impedances(layout);
        for (RangePeak peak : layout.peakBasis().peaks()) {
            Impedance path = source.get().plus(feeders.getOrDefault(peak.node(), Impedance.ZERO));
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
}
