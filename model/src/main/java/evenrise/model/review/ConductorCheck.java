package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.electrical.breaker.ContinuousLoad;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Cable;
import evenrise.model.project.Circuit;
import evenrise.model.project.Feeder;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Practice;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Whether each cable carries its load and is protected by its breaker: Ib ≤ In ≤ Iz, with harmonics on feeders. */
final class ConductorCheck implements ElectricalCheck {
    private static final String ID = "conductor";

    /** Third harmonic from which the neutral counts as a conductor that carries current (assumption). */
    private static final double LOADED_NEUTRAL_PERCENT = 15;

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        Optional<Practice> practice = findings.practice(ID, layout, Remarks.loadsAndPanels(layout));
        if (practice.isEmpty()) {
            return;
        }
        List<String> branches = new ArrayList<>();
        List<String> feeders = new ArrayList<>();
        List<String> tables = new ArrayList<>();
        for (Load load : layout.project().loads()) {
            Optional<Cable> cable = load.circuit().flatMap(Circuit::cable);
            if (MotorDuty.hasMotorRules(load, practice.get())) {
                continue;
            }
            if (cable.isEmpty()) {
                branches.add(load.id());
            } else {
                findings.made(ID, load.id());
                review(layout, cable.get(), branch(load), practice.get(), tables, findings);
            }
        }
        for (Point point : layout.distribution().points()) {
            Optional<Cable> cable = point.feeder().flatMap(Feeder::cable);
            if (point.isSupply() || MotorDuty.hasMotors(layout, point, practice.get())) {
                continue;
            }
            if (cable.isEmpty() && !point.isFurtherSource()) {
                feeders.add(point.id());
            } else if (cable.isPresent()) {
                findings.made(ID, point.id());
                review(layout, cable.get(), feeder(layout, point), practice.get(), tables, findings);
            }
        }
        findings.notChecked(ID, branches, "circuit.cable");
        findings.notChecked(ID, feeders, "feeder.cable");
        findings.notChecked(ID, tables, "a verified table for this size, metal, temperature and method");
    }

    private static Duty branch(Load load) {
        return new Duty(
                load.id(),
                "the cable of load " + Phrase.quoted(load.id()),
                load.runningAmps(),
                load.breakerAmps(),
                load.circuit().map(Circuit::continuous).orElse(true),
                load.circuit().map(Circuit::fullyRated).orElse(false),
                load.poles() == 3 ? 3 : 2,
                0,
                true);
    }

    /** Of what feeds a panel or node, at full use; of a transformer on its primary side. */
    static Duty feeder(Layout layout, Point point) {
        Map<Phase, Double> lines = layout.fullUse().feederAmps(point);
        double sum = lines.values().stream().mapToDouble(Double::doubleValue).sum();
        PhaseSystem system = point.system();
        boolean isThreePhase = system == PhaseSystem.THREE_PHASE && lines.size() == 3;
        double thirdPercent = isThreePhase && sum > 0 ? 100 * thirdAmps(layout, point) / sum : 0;
        Feeder feeder = point.feeder().orElseThrow();
        int phases = lines.size();
        return new Duty(
                point.id(),
                "the feeder of " + point.label(),
                lines.isEmpty() ? 0 : Collections.max(lines.values()),
                feeder.breakerAmps().orElse(Feeders.ratedAmps(point)),
                true,
                feeder.fullyRated(),
                thirdPercent > LOADED_NEUTRAL_PERCENT ? phases + 1 : Math.max(2, phases),
                thirdPercent,
                false);
    }

    /** In the feeder's neutral: what a transformer passes on of it. */
    private static double thirdAmps(Layout layout, Point point) {
        double here = layout.fullUse().neutralThirdAmps(point);
        return point.transformer().isEmpty()
                ? here
                : point.transformer().get().passesNeutralOn()
                        ? point.transformer().get().ratio() * here
                        : 0;
    }

    private static void review(
            Layout layout, Cable cable, Duty duty, Practice practice, List<String> tables, Remarks findings) {
        if (!duty.isBranch()) {
            feederBreaker(duty, practice, findings);
        }
        CableRun run = CableRun.of(layout.project(), cable, duty.breakerAmps()).orElseThrow();
        Optional<Carrying> carrying = Sizing.carrying(run, duty);
        if (carrying.isEmpty()) {
            tables.add(duty.place());
            return;
        }
        findings.add(new Quantity(
                duty.place(),
                "ampacity",
                carrying.get().amps(),
                "A",
                Optional.of(carrying.get().text())));
        Sizing.asked(run, carrying.get(), duty, practice)
                .forEach(each -> findings.add(new Quantity(
                                duty.place(), each.figure(), each.neededAmps(), "A", Optional.of(each.arithmetic()))
                        .atMost(each.allowedAmps(), each.clause())));
        List<Sizing.Shortfall> lacks = Sizing.shortfalls(run, carrying.get(), duty, practice);
        if (!lacks.isEmpty()) {
            String enough = Sizing.enough(run, duty, practice)
                    .map(larger -> "take " + larger.text())
                    .orElse("split what it feeds");
            lacks.forEach(each -> findings.add(remark(run, duty, each, enough)));
        }
    }

    /** Branches are held against theirs by the check of breakers. */
    private static void feederBreaker(Duty duty, Practice practice, Remarks findings) {
        double needed = practice == Practice.NEC
                ? ContinuousLoad.necAmps(duty.lineAmps(), duty.isContinuous(), duty.isFullyRated())
                : duty.lineAmps();
        String clause = practice == Practice.NEC ? "NEC 215.3" : "IEC 60364-4-43 clause 433.1";
        findings.add(new Quantity(duty.place(), "rating that the feeder's loads ask for", needed, "A")
                .atMost(duty.breakerAmps(), clause));
        if (needed > duty.breakerAmps() + 1e-9) {
            findings.add(Remark.builder()
                    .check(ID)
                    .kind("device-too-small")
                    .grade(Grade.BREAKS)
                    .place(duty.place())
                    .figure(needed)
                    .limit(duty.breakerAmps())
                    .unit("A")
                    .clause(clause)
                    .message(duty.label() + " runs at " + HUNDREDTHS.amps(duty.lineAmps()) + " and needs a device of "
                            + HUNDREDTHS.amps(needed, duty.breakerAmps()) + ", it has "
                            + HUNDREDTHS.amps(duty.breakerAmps(), needed))
                    .cure("take a larger device and conductor, or move loads to another panel")
                    .build());
        }
    }

    private static Remark remark(CableRun run, Duty duty, Sizing.Shortfall lack, String cure) {
        String needed = HUNDREDTHS.amps(lack.neededAmps(), lack.allowedAmps());
        String allowed = HUNDREDTHS.amps(lack.allowedAmps(), lack.neededAmps()) + " (" + lack.arithmetic() + ")";
        String what = lack.isProtection()
                ? " is protected at " + needed + ", allowed are " + allowed
                : " carries " + allowed + ", " + lack.what() + " needs " + needed;
        return Remark.builder()
                .check(ID)
                .kind("conductor-too-small")
                .grade(Grade.BREAKS)
                .place(duty.place())
                .figure(lack.neededAmps())
                .limit(lack.allowedAmps())
                .unit("A")
                .clause(lack.clause())
                .message(duty.label() + " (" + run.text() + ")" + what)
                .cure(lack.isProtection() ? cure + " or a smaller breaker" : cure)
                .build();
    }
}
