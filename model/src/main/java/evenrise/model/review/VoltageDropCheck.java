package evenrise.model.review;

import static evenrise.model.contract.Figures.TENTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.Lag;
import evenrise.model.electrical.conductor.VoltageDrop;
import evenrise.model.electrical.source.Terminals;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Electrical;
import evenrise.model.project.Load;
import evenrise.model.project.Practice;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Steady voltage drop at full use from the supply to each load: the feeder's by phasors of what the plan puts on each phase,
 * the branch's by the load's own current; in all, the phasor that arrives at the load, between the lines or the line and neutral that
 * feed it.
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
    public void review(Layout layout, Remarks findings) {
        Map<String, Impedance> impedances = Feeders.impedances(layout);
        FullUseVoltages use = new FullUseVoltages(layout, Feeders.stiff(layout));
        for (Point point : layout.distribution().points()) {
            if (point.parent() >= 0 && isKnown(layout, impedances, point)) {
                findings.made(ID, point.id());
                feeder(layout, point, use, findings);
            }
        }
        List<String> bareBranches = new ArrayList<>();
        for (Placement each : layout.placements()) {
            if (each.fits()) {
                Optional<CableRun> run = FullUseVoltages.branch(layout, each.load());
                if (run.isEmpty()) {
                    bareBranches.add(each.id());
                } else {
                    findings.made(ID, each.id());
                    boolean isFed = isKnown(
                            layout,
                            impedances,
                            layout.distribution().of(each.panel().orElseThrow()));
                    OptionalDouble all = isFed ? OptionalDouble.of(use.lowPercent(each)) : OptionalDouble.empty();
                    branch(layout, each.load(), run.get(), all, findings);
                }
            }
        }
        findings.notChecked(ID, Feeders.bare(layout), "feeder.cable");
        findings.notChecked(ID, Feeders.bareTransformers(layout), "transformer.rated_kva and impedance_pct");
        findings.notChecked(ID, bareBranches, "circuit.cable");
    }

    /** All cables and transformers from the source down to a point. */
    private static boolean isKnown(Layout layout, Map<String, Impedance> impedances, Point point) {
        if (point.parent() < 0) {
            return true;
        }
        boolean isOwn = impedances.containsKey(point.id())
                && (point.transformer().isEmpty()
                        || RatedTransformer.of(point)
                                .flatMap(RatedTransformer::impedance)
                                .isPresent());
        return isOwn
                && isKnown(layout, impedances, layout.distribution().points().get(point.parent()));
    }

    /** To neutral on every phase, and between the lines that feed a load of several poles. */
    private static void feeder(Layout layout, Point panel, FullUseVoltages use, Remarks findings) {
        String name = Feeders.isStar(layout) ? "voltage drop of the feeder, " : "voltage drop in all, ";
        for (Terminals at : Terminals.all(panel.system())) {
            boolean isUsed = layout.nodeLoads().direct(panel.index()).stream()
                    .anyMatch(each -> Terminals.of(each.phases()).contains(at));
            if (at.to().isEmpty() || isUsed) {
                findings.add(new Quantity(panel.id(), name + at.text(), use.lowPercent(panel.id(), at), "%"));
            }
        }
    }

    private static void branch(Layout layout, Load load, CableRun run, OptionalDouble all, Remarks findings) {
        double volts = volts(layout, load);
        double drop = VoltageDrop.exactVolts(
                volts, load.runningAmps(), Lag.of(load), run.impedance(), VoltageDrop.ways(load.poles() == 3));
        double branch = 100 * drop / volts;
        findings.add(new Quantity(load.id(), "voltage drop of the branch", branch, "%")
                .atMost(BRANCH_PERCENT, clause(layout)));
        double total = Math.max(branch, all.orElse(0));
        if (all.isPresent()) {
            findings.add(
                    new Quantity(load.id(), "voltage drop in all", total, "%").atMost(TOTAL_PERCENT, clause(layout)));
        }
        String where = "load " + Phrase.quoted(load.id()) + " (" + run.text() + ", "
                + String.format(java.util.Locale.ROOT, "%.0f m", run.cable().lengthMetres()) + ")";
        if (branch > BRANCH_PERCENT) {
            over(
                    layout,
                    load,
                    branch,
                    BRANCH_PERCENT,
                    where + " loses " + TENTHS.percent(branch, BRANCH_PERCENT) + " on its branch",
                    findings);
        } else if (total > TOTAL_PERCENT) {
            over(
                    layout,
                    load,
                    total,
                    TOTAL_PERCENT,
                    where + " loses " + TENTHS.percent(total, TOTAL_PERCENT)
                            + (Feeders.isStar(layout)
                                    ? " on feeder and branch"
                                    : " on transformers, feeders and branch, taps not counted"),
                    findings);
        }
    }

    private static void over(Layout layout, Load load, double percent, double limit, String what, Remarks findings) {
        findings.add(Remark.builder()
                .check(ID)
                .kind("drops-too-far")
                .grade(Grade.EXCEEDS_RECOMMENDATION)
                .place(load.id())
                .figure(percent)
                .limit(limit)
                .unit("%")
                .clause(clause(layout))
                .message(what + ", recommended are at most " + TENTHS.percent(limit, percent))
                .cure("take a larger size or a nearer panel")
                .build());
    }

    private static String clause(Layout layout) {
        boolean isIec = layout.project().electrical().flatMap(Electrical::practice).stream()
                .anyMatch(practice -> practice == Practice.IEC);
        return isIec
                ? "recommendation taken over from NEC practice; IEC 60364-5-52 annex G counts from the origin (from"
                        + " memory)"
                : "NEC 210.19(A) and 215.2(A), informational notes";
    }

    private static double volts(Layout layout, Load load) {
        return Level.of(layout, load).volts(load.poles());
    }
}
