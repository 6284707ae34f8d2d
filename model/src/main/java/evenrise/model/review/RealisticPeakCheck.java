package evenrise.model.review;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.source.SharedSource;
import evenrise.model.plan.Quantity;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.PhasePeak;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The peak that the source's and the feeders' impedance leaves of each node's peak at nominal voltage. */
final class RealisticPeakCheck implements ElectricalCheck {
    private static final String ID = "realistic-peak";

    @Override
    public String id() {
        return ID;
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
        Map<String, Impedance> feeders = Feeders.impedances(layout);
        for (NodeFigures node : layout.nodes()) {
            Impedance path = source.get().plus(feeders.getOrDefault(node.node(), Impedance.ZERO));
            double bound =
                    node.peaks().stream().mapToDouble(PhasePeak::amps).max().orElse(0);
            findings.add(new Quantity(node.node(), "peak inrush, upper bound at nominal voltage", bound, "A"));
            findings.add(new Quantity(
                    node.node(),
                    "peak inrush behind the source",
                    SharedSource.crestAmps(bound, crestVolts, path),
                    "A"));
        }
    }
}
