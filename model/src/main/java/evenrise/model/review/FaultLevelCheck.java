package evenrise.model.review;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.source.FaultCurrent;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Electrical;
import evenrise.model.project.Panel;
import evenrise.model.project.Practice;
import evenrise.model.project.Supply;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;

/** Fault current from the source down to each panel, against what the panel and its breakers can interrupt. */
final class FaultLevelCheck implements ElectricalCheck {
    private static final String ID = "fault-level";

    /** Interrupting ratings that are commonly made, in ampere; read in code. */
    private static final double[] STEPS = {10_000, 14_000, 22_000, 25_000, 42_000, 65_000, 100_000, 200_000};

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Findings findings) {
        Optional<SourceModel> model = SourceModel.of(layout.project());
        Optional<Impedance> source = model.flatMap(SourceModel::forFaults);
        if (source.isEmpty()) {
            String needs = model.map(SourceModel::needs).orElse("electrical.source");
            findings.notChecked(ID, List.of(NodeFigures.SUPPLY), needs);
            return;
        }
        Supply supply = layout.project().supply();
        double factor = model.get().voltageFactor();
        findings.add(new Quantity(
                NodeFigures.SUPPLY,
                "fault current",
                FaultCurrent.amps(factor, supply.lineToNeutralVolts(), source.get()),
                "A"));
        List<String> bareFeeders = new ArrayList<>();
        List<String> bareRatings = new ArrayList<>();
        Map<String, Impedance> feeders = Feeders.impedances(layout);
        for (Panel panel : layout.project().panels()) {
            Impedance feeder = feeders.getOrDefault(panel.id(), Impedance.ZERO);
            if (!feeders.containsKey(panel.id())) {
                bareFeeders.add(panel.id());
            }
            double volts = supply.lineToNeutralVolts();
            double lines = FaultCurrent.amps(factor, volts, source.get().plus(feeder));
            double toNeutral = FaultCurrent.amps(
                    factor, volts, source.get().plus(feeder).plus(feeder.times(1 / panel.neutralFactor())));
            findings.add(new Quantity(panel.id(), "fault current", lines, "A"));
            findings.add(new Quantity(panel.id(), "fault current to neutral", toNeutral, "A"));
            if (panel.interruptingAmps().isEmpty()) {
                bareRatings.add(panel.id());
            } else if (lines > panel.interruptingAmps().getAsDouble()) {
                findings.add(tooMuch(layout, panel, lines));
            }
        }
        findings.notChecked(ID, bareFeeders, "feeder.cable; the fault current is taken as the supply's");
        findings.notChecked(ID, bareRatings, "interrupting_a");
    }

    private static Remark tooMuch(Layout layout, Panel panel, double amps) {
        boolean isIec = layout.project().electrical().flatMap(Electrical::practice).stream()
                .anyMatch(practice -> practice == Practice.IEC);
        OptionalDouble next =
                DoubleStream.of(STEPS).filter(step -> step >= amps).findFirst();
        String cure = next.isPresent()
                ? String.format(java.util.Locale.ROOT, " Maybe take breakers of %.0f kA.", next.getAsDouble() / 1000)
                : " Maybe put a limiting device before it.";
        return Remark.builder()
                .check(ID)
                .grade(Grade.BREAKS)
                .place(panel.id())
                .figure(amps)
                .limit(panel.interruptingAmps())
                .unit("A")
                .clause(isIec ? "IEC 60364-4-43 clause 434.5.1 (clause from memory)" : "NEC 110.9")
                .message(String.format(
                                java.util.Locale.ROOT,
                                "panel '%s' can see a fault of %.1f kA, it interrupts %.1f kA.",
                                panel.id(),
                                amps / 1000,
                                panel.interruptingAmps().getAsDouble() / 1000)
                        + cure)
                .build();
    }
}
