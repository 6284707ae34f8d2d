package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;
import static evenrise.model.contract.Figures.TENTHS;

import evenrise.model.plan.Grade;
import evenrise.model.plan.PeakBasis;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.RangePeak;
import evenrise.model.plan.Remark;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.SupplyVoltage;
import evenrise.model.rules.Tolerances;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Whether each inrush limit holds over all voltages that the supply may have, with idle currents at the crest that is
 * stated; the hard rule holds it at the nominal voltage, with sines. It breaks where the project states the voltages, or
 * where the stated crests alone exceed the limit; where the voltages are assumed, it exceeds a recommendation. Says for
 * whom these peaks are no bounds.
 */
final class InrushToleranceCheck implements ElectricalCheck {
    private static final String ID = "inrush-tolerance";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        PeakBasis basis = layout.peakBasis();
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        List<RangePeak> atNominal = layout.peaksOver(SupplyVoltage.NOMINAL);
        for (int i = 0; i < limits.size(); i++) {
            RangePeak peak = basis.peaks().get(i);
            OptionalDouble limit = limits.get(i).inrushLimitAmps();
            findings.add(new Quantity(peak.node(), "peak inrush over the voltage range", peak.rangeAmps(), "A")
                    .atMost(limit, "inrush_limit_a, as the project states"));
            limit.ifPresent(any -> findings.made(ID, peak.node()));
            if (limit.isPresent() && peak.rangeAmps() > limit.getAsDouble() + Tolerances.AMPS) {
                boolean surely = !basis.voltageAssumed() || atNominal.get(i).rangeAmps() > limit.getAsDouble();
                findings.add(over(limits.get(i), peak, limit.getAsDouble(), basis, surely));
            }
        }
        findings.notChecked(
                ID,
                basis.withoutInrush(),
                "inrush_peak_a, without which no peak is an upper bound; √2·idle_a says none");
        findings.notChecked(
                ID,
                basis.withoutWaveform(),
                "crest_factor or third_harmonic, without which the crest of the idle current is taken as a sine's");
    }

    private static Remark over(NodeLimits limits, RangePeak peak, double limit, PeakBasis basis, boolean surely) {
        double ratio = peak.nominalAmps() > 0 ? peak.rangeAmps() / peak.nominalAmps() : 1;
        return Remark.builder()
                .check(ID)
                .kind("over-within-voltage-range")
                .grade(surely ? Grade.BREAKS : Grade.EXCEEDS_RECOMMENDATION)
                .place(peak.node())
                .figure(peak.rangeAmps())
                .limit(limit)
                .unit("A")
                .message(limits.label() + " peaks at " + HUNDREDTHS.amps(peak.rangeAmps(), limit) + " on phase "
                        + peak.rangePhase() + " at " + TENTHS.percent(basis.leastVoltagePercent()) + " to "
                        + TENTHS.percent(basis.mostVoltagePercent()) + " of its voltage (" + basis.voltageFrom()
                        + "), at the nominal one at " + HUNDREDTHS.amps(peak.nominalAmps()) + ", allowed are "
                        + HUNDREDTHS.amps(limit, peak.rangeAmps()))
                .cure("plan with an inrush limit of " + HUNDREDTHS.amps(limit / ratio)
                        + ", state a narrower supply.voltage_range, or limit the inrush of the largest loads")
                .build();
    }
}
