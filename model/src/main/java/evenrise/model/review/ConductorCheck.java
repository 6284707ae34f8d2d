package evenrise.model.review;

import evenrise.model.electrical.NeutralCurrent;
import evenrise.model.electrical.PhaseCurrents;
import evenrise.model.electrical.breaker.ContinuousLoad;
import evenrise.model.electrical.breaker.StandardRatings;
import evenrise.model.electrical.conductor.HarmonicReduction;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Cable;
import evenrise.model.project.Circuit;
import evenrise.model.project.ConductorMaterial;
import evenrise.model.project.Electrical;
import evenrise.model.project.Feeder;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Practice;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Whether each cable carries its load and is protected by its breaker: Ib ≤ In ≤ Iz, with harmonics on feeders. */
final class ConductorCheck implements ElectricalCheck {
    private static final String ID = "conductor";

    /** NEC 240.4(B): the next standard rating above the ampacity is allowed up to this. */
    private static final double NEXT_SIZE_UP_TO_AMPS = 800;

    /** NEC 240.4(D) for copper, read in one copy. */
    private static final Map<String, Double> SMALL_COPPER = Map.of("14 AWG", 15.0, "12 AWG", 20.0, "10 AWG", 30.0);

    /** NEC 240.4(D) for aluminium (from memory). */
    private static final Map<String, Double> SMALL_ALUMINIUM = Map.of("12 AWG", 15.0, "10 AWG", 25.0);

    /** Third harmonic from which the neutral counts as a conductor that carries current (assumption). */
    private static final double LOADED_NEUTRAL_PERCENT = 15;

    /**
     * What one cable carries.
     *
     * @param loaded conductors of its own that carry current
     * @param thirdPercent third harmonic, of the line current
     */
    private record Duty(
            String place,
            String label,
            double lineAmps,
            double breakerAmps,
            boolean isContinuous,
            boolean isFullyRated,
            int loaded,
            double thirdPercent,
            boolean isBranch) {}

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Findings findings) {
        Optional<Practice> practice = layout.project().electrical().flatMap(Electrical::practice);
        if (practice.isEmpty()) {
            findings.notChecked(ID, List.of(Findings.PLANT), "electrical.practice");
            return;
        }
        List<String> branches = new ArrayList<>();
        List<String> feeders = new ArrayList<>();
        List<String> tables = new ArrayList<>();
        for (Load load : layout.project().loads()) {
            Optional<Cable> cable = load.circuit().flatMap(Circuit::cable);
            if (cable.isEmpty()) {
                branches.add(load.id());
            } else {
                review(layout, cable.get(), branch(load), practice.get(), tables, findings);
            }
        }
        for (Panel panel : layout.project().panels()) {
            Optional<Cable> cable = panel.feeder().flatMap(Feeder::cable);
            if (cable.isEmpty()) {
                feeders.add(panel.id());
            } else {
                review(layout, cable.get(), feeder(layout, panel), practice.get(), tables, findings);
            }
        }
        findings.notChecked(ID, branches, "circuit.cable");
        findings.notChecked(ID, feeders, "feeder.cable");
        findings.notChecked(ID, tables, "a verified table for this size, metal, temperature and method");
    }

    private static Duty branch(Load load) {
        return new Duty(
                load.id(),
                "the cable of load " + Say.quoted(load.id()),
                load.runningAmps(),
                load.breakerAmps(),
                load.circuit().map(Circuit::continuous).orElse(true),
                load.circuit().map(Circuit::fullyRated).orElse(false),
                load.poles() == 3 ? 3 : 2,
                0,
                true);
    }

    private static Duty feeder(Layout layout, Panel panel) {
        PhaseSystem system = layout.project().supply().system();
        PhaseCurrents lines = new PhaseCurrents(system);
        double third = 0;
        for (Placement each : layout.in(panel)) {
            Load load = each.load();
            lines.add(each.phases(), load.runningAmps());
            if (load.poles() == 1) {
                third += NeutralCurrent.share(
                                system,
                                each.phases().get(0),
                                load.runningAmps(),
                                load.powerFactor(),
                                load.thirdHarmonic())
                        .thirdAmps();
            }
        }
        double sum = lines.byPhase().values().stream()
                .mapToDouble(Double::doubleValue)
                .sum();
        double thirdPercent = system == PhaseSystem.THREE_PHASE && sum > 0 ? 100 * Math.abs(third) / sum : 0;
        Feeder feeder = panel.feeder().orElseThrow();
        int phases = system.phases().size();
        return new Duty(
                panel.id(),
                "the feeder of panel " + Say.quoted(panel.id()),
                lines.byPhase().isEmpty() ? 0 : Collections.max(lines.byPhase().values()),
                feeder.breakerAmps().orElse(panel.ratedAmps()),
                true,
                feeder.fullyRated(),
                thirdPercent > LOADED_NEUTRAL_PERCENT ? phases + 1 : Math.max(2, phases),
                thirdPercent,
                false);
    }

    private static void review(
            Layout layout, Cable cable, Duty duty, Practice practice, List<String> tables, Findings findings) {
        if (!duty.isBranch()) {
            feederBreaker(duty, practice, findings);
        }
        Run run = Run.of(layout.project(), cable, duty.breakerAmps()).orElseThrow();
        OptionalDouble ampacity = run.ampacityAmps(Math.min(3, duty.loaded()), duty.loaded());
        if (ampacity.isEmpty()) {
            tables.add(duty.place());
            return;
        }
        double carries = ampacity.getAsDouble();
        findings.add(new Quantity(duty.place(), "ampacity", carries, "A"));
        if (practice == Practice.NEC) {
            nec(run, duty, carries, findings);
        } else {
            iec(run, duty, carries, findings);
        }
    }

    /** Branches are held against theirs by the check of breakers. */
    private static void feederBreaker(Duty duty, Practice practice, Findings findings) {
        double needed = practice == Practice.NEC
                ? ContinuousLoad.necAmps(duty.lineAmps(), duty.isContinuous(), duty.isFullyRated())
                : duty.lineAmps();
        if (needed > duty.breakerAmps() + 1e-9) {
            findings.add(Remark.builder()
                    .check(ID)
                    .grade(Grade.BREAKS)
                    .place(duty.place())
                    .figure(needed)
                    .limit(duty.breakerAmps())
                    .unit("A")
                    .clause(practice == Practice.NEC ? "NEC 215.3" : "IEC 60364-4-43 clause 433.1")
                    .message(duty.label() + " runs at " + Say.amps(duty.lineAmps()) + " and needs a device of "
                            + Say.amps(needed) + ", it has " + Say.amps(duty.breakerAmps())
                            + ". Maybe take a larger device and conductor, or move loads to another panel.")
                    .build());
        }
    }

    private static void nec(Run run, Duty duty, double carries, Findings findings) {
        // 125 % is held against the table alone, the current itself against the corrected ampacity.
        double continuous = ContinuousLoad.necAmps(duty.lineAmps(), duty.isContinuous(), duty.isFullyRated());
        double tabulated = run.tabulatedAmps(3).orElse(carries);
        String clause = duty.isBranch() ? "NEC 210.19(A)" : "NEC 215.2(A)";
        if (continuous > tabulated + 1e-9) {
            less(
                    run,
                    duty,
                    continuous,
                    tabulated,
                    duty.isContinuous() && !duty.isFullyRated()
                            ? "125 % of its continuous current before correction"
                            : "its current before correction",
                    clause,
                    findings);
        } else if (duty.lineAmps() > carries + 1e-9) {
            less(run, duty, duty.lineAmps(), carries, "its current after correction", clause, findings);
        }
        Map<String, Double> small = run.cable().material() == ConductorMaterial.COPPER ? SMALL_COPPER : SMALL_ALUMINIUM;
        Double most = small.get(run.size().name());
        if (most != null && duty.breakerAmps() > most) {
            unprotected(run, duty, most, "NEC 240.4(D)", findings);
            return;
        }
        double allowed = carries <= NEXT_SIZE_UP_TO_AMPS
                ? Math.min(
                        NEXT_SIZE_UP_TO_AMPS,
                        StandardRatings.atLeast(Practice.NEC, carries).orElse(carries))
                : carries;
        if (duty.breakerAmps() > Math.max(allowed, carries) + 1e-9) {
            unprotected(
                    run, duty, allowed, carries <= NEXT_SIZE_UP_TO_AMPS ? "NEC 240.4(B)" : "NEC 240.4(C)", findings);
        }
    }

    private static void iec(Run run, Duty duty, double carries, Findings findings) {
        HarmonicReduction harmonics = HarmonicReduction.of(duty.lineAmps(), duty.thirdPercent());
        double reduced = carries * harmonics.factor();
        String what = harmonics.isByNeutral() ? "its neutral's current, which governs," : "its current";
        if (harmonics.governingAmps() > reduced + 1e-9) {
            less(
                    run,
                    duty,
                    harmonics.governingAmps(),
                    reduced,
                    what,
                    duty.thirdPercent() > 15 ? "IEC 60364-5-52 annex E" : "IEC 60364-4-43 clause 433.1",
                    findings);
        }
        if (duty.breakerAmps() > reduced + 1e-9) {
            unprotected(run, duty, reduced, "IEC 60364-4-43 clause 433.1", findings);
        }
    }

    private static void less(
            Run run, Duty duty, double needed, double carries, String what, String clause, Findings findings) {
        findings.add(Remark.builder()
                .check(ID)
                .grade(Grade.BREAKS)
                .place(duty.place())
                .figure(needed)
                .limit(carries)
                .unit("A")
                .clause(clause)
                .message(duty.label() + " (" + run.text() + ") carries " + Say.amps(carries) + ", " + what + " needs "
                        + Say.amps(needed) + ". Maybe take a larger size.")
                .build());
    }

    private static void unprotected(Run run, Duty duty, double allowed, String clause, Findings findings) {
        findings.add(Remark.builder()
                .check(ID)
                .grade(Grade.BREAKS)
                .place(duty.place())
                .figure(duty.breakerAmps())
                .limit(allowed)
                .unit("A")
                .clause(clause)
                .message(duty.label() + " (" + run.text() + ") is protected at " + Say.amps(duty.breakerAmps())
                        + ", allowed are " + Say.amps(allowed) + ". Maybe take a larger size or a smaller breaker.")
                .build());
    }
}
