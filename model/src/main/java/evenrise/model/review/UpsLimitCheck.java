package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;

import evenrise.model.electrical.LinePower;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.RangePeak;
import evenrise.model.plan.Remark;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.SourceKind;
import evenrise.model.project.Supply;
import evenrise.model.project.SupplySource;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** Whether a UPS on its inverter carries the sequence without limiting its current or shedding the load. */
final class UpsLimitCheck implements ElectricalCheck {
    private static final String ID = "ups-limit";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        Optional<SupplySource> ups = SourceModel.of(layout.project())
                .map(SourceModel::source)
                .filter(source -> source.kind() == SourceKind.UPS);
        if (ups.isEmpty()) {
            return;
        }
        if (ups.get().ratedKva().isEmpty() || ups.get().currentLimitPercent().isEmpty()) {
            findings.notChecked(ID, List.of(NodeFigures.SUPPLY), "electrical.source.rated_kva and current_limit_pct");
            return;
        }
        findings.made(ID, NodeFigures.SUPPLY);
        Supply supply = layout.project().supply();
        double rated = ratedAmps(supply, ups.get().ratedKva().getAsDouble());
        double limit = Math.sqrt(2) * rated * ups.get().currentLimitPercent().getAsDouble() / 100;
        NodeFigures node = layout.nodes().get(0);
        RangePeak peaks = layout.peakBasis().supply();
        double peak = Math.max(peaks.nominalAmps(), peaks.rangeAmps());
        double running = Collections.max(node.runningAmps().values());
        findings.add(new Quantity(NodeFigures.SUPPLY, "rated current of the UPS", rated, "A")
                .atLeast(running, "rating by its nameplate"));
        findings.add(new Quantity(NodeFigures.SUPPLY, "crest at which the UPS limits", limit, "A")
                .atLeast(peak, "current_limit_pct, as its maker states"));
        if (peak > limit) {
            boolean surely = peaks.nominalAmps() > limit || !layout.peakBasis().voltageAssumed();
            findings.add(remark(
                    "over-crest-limit",
                    surely ? Grade.BREAKS : Grade.EXCEEDS_RECOMMENDATION,
                    peak,
                    limit,
                    "the sequence peaks at " + HUNDREDTHS.amps(peak, limit) + " over the voltage range ("
                            + layout.peakBasis().voltageFrom() + "; " + HUNDREDTHS.amps(peaks.nominalAmps(), limit)
                            + " at nominal voltage), the UPS limits its crest at "
                            + HUNDREDTHS.amps(limit, peak)
                            + ": its voltage collapses or it goes to bypass",
                    "spread the loads with the largest inrush, or limit it, or state as supply.voltage_range what the"
                            + " inverter holds"));
        }
        findings.notChecked(
                ID, layout.peakBasis().withoutInrush(), "inrush_peak_a, without which the peak is no upper bound");
        if (running > rated) {
            findings.add(remark(
                    "over-rating",
                    Grade.BREAKS,
                    running,
                    rated,
                    "the highest phase runs at " + HUNDREDTHS.amps(running, rated) + ", the UPS is rated "
                            + HUNDREDTHS.amps(rated, running),
                    "move loads to another supply"));
        }
    }

    private static double ratedAmps(Supply supply, double kva) {
        int poles = supply.system().phases().size();
        double perAmp = supply.system() == PhaseSystem.SINGLE_PHASE
                ? supply.lineToNeutralVolts()
                : LinePower.voltAmpsPerAmp(supply.system(), poles, supply.lineToNeutralVolts());
        return 1000 * kva / perAmp;
    }

    private static Remark remark(String kind, Grade grade, double figure, double limit, String message, String cure) {
        return Remark.builder()
                .check(ID)
                .kind(kind)
                .grade(grade)
                .place(NodeFigures.SUPPLY)
                .figure(figure)
                .limit(limit)
                .unit("A")
                .clause("")
                .message(message)
                .cure(cure)
                .build();
    }
}
