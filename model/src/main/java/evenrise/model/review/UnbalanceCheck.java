package evenrise.model.review;

import evenrise.model.electrical.Imbalance;
import evenrise.model.electrical.Lag;
import evenrise.model.electrical.LineCurrents;
import evenrise.model.electrical.LinePower;
import evenrise.model.electrical.PhaseCurrents;
import evenrise.model.electrical.SymmetricalComponents;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Load;
import evenrise.model.project.PhaseSystem;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.function.ToDoubleFunction;

/**
 * How unequal the line currents are, in the form of NEMA MG 1 and as symmetrical components, at full use and at idle, at
 * the supply and at each panel with its feeder.
 */
final class UnbalanceCheck implements ElectricalCheck {
    private static final String ID = "unbalance";

    /** Common practice, no source: designers aim at phases within a tenth of their mean. */
    private static final double USUAL_PERCENT = 10;

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Findings findings) {
        PhaseSystem system = layout.project().supply().system();
        if (system == PhaseSystem.SINGLE_PHASE) {
            return;
        }
        for (Fed fed : Fed.all(layout)) {
            if (!fed.loads().isEmpty() && fed.limits().phases().size() > 1) {
                review(fed, system, Load::runningAmps, "at full use", findings);
                review(fed, system, Load::idleAmps, "at idle", findings);
            }
        }
    }

    private static void review(
            Fed fed, PhaseSystem system, ToDoubleFunction<Load> amps, String when, Findings findings) {
        double percent = imbalance(fed, system, amps).percent();
        findings.add(new Quantity(fed.node(), "imbalance " + when, percent, "%"));
        String components = "";
        if (fed.limits().phases().size() == 3) {
            SymmetricalComponents sequences = components(fed, amps);
            findings.add(new Quantity(fed.node(), "negative sequence " + when, sequences.negativePercent(), "%"));
            findings.add(new Quantity(fed.node(), "zero sequence " + when, sequences.zeroPercent(), "%"));
            components = "; negative sequence " + Say.percent(sequences.negativePercent()) + ", zero sequence "
                    + Say.percent(sequences.zeroPercent()) + " of the positive one";
        }
        if (percent > USUAL_PERCENT) {
            findings.add(Remark.builder()
                    .check(ID)
                    .grade(Grade.NOTE)
                    .place(fed.node())
                    .figure(percent)
                    .limit(USUAL_PERCENT)
                    .unit("%")
                    .clause("")
                    .message("the line currents of " + Say.node(fed.node()) + " differ by "
                            + Say.percent(percent, USUAL_PERCENT) + " "
                            + when
                            + ", usual are at most " + Say.percent(USUAL_PERCENT, percent)
                            + " (common practice, no source)" + components
                            + ". Maybe move a load to another phase or panel.")
                    .build());
        }
    }

    private static Imbalance imbalance(Fed fed, PhaseSystem system, ToDoubleFunction<Load> amps) {
        PhaseCurrents lines = new PhaseCurrents(system);
        fed.loads().forEach(each -> lines.add(each.phases(), amps.applyAsDouble(each.load())));
        return lines.imbalance(fed.limits().phases());
    }

    private static SymmetricalComponents components(Fed fed, ToDoubleFunction<Load> amps) {
        LineCurrents lines = new LineCurrents(PhaseSystem.THREE_PHASE);
        for (Placement each : fed.loads()) {
            Load load = each.load();
            double fundamental = amps.applyAsDouble(load) / LinePower.rmsOverFundamental(load.harmonicRatio());
            lines.add(each.phases(), fundamental, Lag.of(load));
        }
        return lines.components();
    }
}
