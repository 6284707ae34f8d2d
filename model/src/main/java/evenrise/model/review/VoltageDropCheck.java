package evenrise.model.review;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.Lag;
import evenrise.model.electrical.LineCurrents;
import evenrise.model.electrical.LinePower;
import evenrise.model.electrical.Phasor;
import evenrise.model.electrical.conductor.VoltageDrop;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Circuit;
import evenrise.model.project.Electrical;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Practice;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Steady voltage drop at full use from the supply to each load: the feeder's by phasors of what the plan puts on each phase,
 * the branch's by the load's own current; the two added in percent of the nominal voltage.
 */
final class VoltageDropCheck implements ElectricalCheck {
    private static final String ID = "voltage-drop";
    private static final double BRANCH_PERCENT = 3;
    private static final double TOTAL_PERCENT = 5;

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Findings findings) {
        Map<String, Impedance> impedances = Feeders.impedances(layout);
        Map<String, Map<Phase, Double>> feeders = new LinkedHashMap<>();
        List<String> bareFeeders = new ArrayList<>();
        for (Panel panel : layout.project().panels()) {
            Impedance line = impedances.get(panel.id());
            if (line == null) {
                bareFeeders.add(panel.id());
            } else {
                Map<Phase, Double> drops = feederPercents(layout, panel, line);
                feeders.put(panel.id(), drops);
                findings.made(ID, panel.id());
                drops.forEach((phase, percent) -> findings.add(
                        new Quantity(panel.id(), "voltage drop of the feeder, phase " + phase, percent, "%")));
            }
        }
        List<String> bareBranches = new ArrayList<>();
        for (Placement each : layout.placements()) {
            if (each.fits()) {
                branch(layout, each, feeders, bareBranches, findings);
            }
        }
        findings.notChecked(ID, bareFeeders, "feeder.cable");
        findings.notChecked(ID, bareBranches, "circuit.cable");
    }

    /** Of a phase to neutral: |V| − |V − Z·I − Zn·In|, in percent; the neutral's impedance is Z over the neutral factor. */
    private static Map<Phase, Double> feederPercents(Layout layout, Panel panel, Impedance line) {
        PhaseSystem system = layout.project().supply().system();
        LineCurrents currents = new LineCurrents(system);
        for (Placement each : layout.in(panel)) {
            Load load = each.load();
            double fundamental = load.runningAmps() / LinePower.rmsOverFundamental(load.harmonicRatio());
            currents.add(each.phases(), fundamental, Lag.of(load));
        }
        double volts = layout.project().supply().lineToNeutralVolts();
        Phasor alongNeutral = currents.neutral().times(line.times(1 / panel.neutralFactor()));
        Map<Phase, Double> percents = new LinkedHashMap<>();
        for (Phase phase : system.phases()) {
            Phasor arriving = currents.unitVoltage(phase)
                    .times(volts)
                    .plus(currents.line(phase).times(line).times(-1))
                    .plus(alongNeutral.times(-1));
            percents.put(phase, 100 * (volts - arriving.length()) / volts);
        }
        return percents;
    }

    private static void branch(
            Layout layout,
            Placement each,
            Map<String, Map<Phase, Double>> feeders,
            List<String> bareBranches,
            Findings findings) {
        Load load = each.load();
        Optional<Run> run = load.circuit()
                .flatMap(Circuit::cable)
                .flatMap(cable -> Run.of(layout.project(), cable, load.breakerAmps()));
        if (run.isEmpty()) {
            bareBranches.add(load.id());
            return;
        }
        findings.made(ID, load.id());
        double volts = volts(layout, load);
        double drop = VoltageDrop.exactVolts(
                volts, load.runningAmps(), Lag.of(load), run.get().impedance(), VoltageDrop.ways(load.poles() == 3));
        double branch = 100 * drop / volts;
        findings.add(new Quantity(load.id(), "voltage drop of the branch", branch, "%"));
        Map<Phase, Double> above = feeders.get(each.assignment().panel());
        OptionalDouble feeder = above == null
                ? OptionalDouble.empty()
                : each.phases().stream().mapToDouble(above::get).max();
        double total = branch + feeder.orElse(0);
        if (feeder.isPresent()) {
            findings.add(new Quantity(load.id(), "voltage drop in all", total, "%"));
        }
        String where = "load " + Say.quoted(load.id()) + " (" + run.get().text() + ", "
                + String.format(
                        java.util.Locale.ROOT, "%.0f m", run.get().cable().lengthMetres()) + ")";
        if (branch > BRANCH_PERCENT) {
            over(
                    layout,
                    load,
                    branch,
                    BRANCH_PERCENT,
                    where + " loses " + Say.percent(branch, BRANCH_PERCENT) + " on its branch",
                    findings);
        } else if (total > TOTAL_PERCENT) {
            over(
                    layout,
                    load,
                    total,
                    TOTAL_PERCENT,
                    where + " loses " + Say.percent(total, TOTAL_PERCENT) + " on feeder and branch",
                    findings);
        }
    }

    private static void over(Layout layout, Load load, double percent, double limit, String what, Findings findings) {
        boolean isIec = layout.project().electrical().flatMap(Electrical::practice).stream()
                .anyMatch(practice -> practice == Practice.IEC);
        findings.add(Remark.builder()
                .check(ID)
                .grade(Grade.EXCEEDS_RECOMMENDATION)
                .place(load.id())
                .figure(percent)
                .limit(limit)
                .unit("%")
                .clause(
                        isIec
                                ? "recommendation taken over from NEC practice; IEC 60364-5-52 annex G counts from the"
                                        + " origin (from memory)"
                                : "NEC 210.19(A) and 215.2(A), informational notes")
                .message(what + ", recommended are at most " + Say.percent(limit, percent)
                        + ". Maybe take a larger size or a nearer panel.")
                .build());
    }

    private static double volts(Layout layout, Load load) {
        double perAmp = Demand.voltAmpsPerAmp(layout.project(), load);
        return load.poles() == 3 ? perAmp / Math.sqrt(3) : perAmp;
    }
}
