package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.electrical.motor.MotorBranch;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Cable;
import evenrise.model.project.Circuit;
import evenrise.model.project.Load;
import evenrise.model.project.Practice;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Circuits of motors, whose breaker is against faults and whose overload device protects the rest: breaker, conductor and
 * overload by their own rules in the place of the general ones.
 */
final class MotorCircuitCheck implements ElectricalCheck {
    private static final String ID = "motor-circuit";
    private static final String ABOVE_TABLE = "NEC 430.52(C)(1)";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        List<MotorDuty> motors = layout.project().loads().stream()
                .flatMap(load -> MotorDuty.of(layout, load).stream())
                .toList();
        if (motors.isEmpty()) {
            return;
        }
        Optional<Practice> practice = findings.practice(
                ID, layout, motors.stream().map(duty -> duty.load().id()).toList());
        if (practice.isEmpty()) {
            return;
        }
        motors.forEach(duty -> findings.made(ID, duty.load().id()));
        if (practice.get() == Practice.NEC) {
            nec(layout, motors, findings);
        } else {
            iec(layout, motors, findings);
        }
    }

    private static void nec(Layout layout, List<MotorDuty> motors, Remarks findings) {
        List<String> unknown = new ArrayList<>();
        List<String> cables = new ArrayList<>();
        List<String> tables = new ArrayList<>();
        List<String> overloads = new ArrayList<>();
        for (MotorDuty duty : motors) {
            if (duty.fullLoadAmps().isEmpty()) {
                unknown.add(duty.load().id());
                continue;
            }
            findings.add(new Quantity(duty.load().id(), "full-load current of the motor", duty.lineAmps(), "A"));
            breaker(duty, findings);
            Optional<Cable> cable = duty.load().circuit().flatMap(Circuit::cable);
            if (cable.isEmpty()) {
                cables.add(duty.load().id());
            } else if (!carries(
                    layout,
                    duty,
                    cable.get(),
                    duty.conductorAmps(),
                    conductorNeed(duty),
                    conductorClause(duty),
                    findings)) {
                tables.add(duty.load().id());
            }
            if (!overload(duty, findings)) {
                overloads.add(duty.load().id());
            }
        }
        findings.notChecked(
                ID,
                unknown,
                "equipment.motor.horsepower at a voltage of tables 430.248 and 430.250, or"
                        + " equipment.motor.nameplate_a");
        findings.notChecked(ID, cables, "circuit.cable");
        findings.notChecked(ID, tables, "a verified table for this size, metal, temperature and method");
        findings.notChecked(ID, overloads, "equipment.motor.nameplate_a and overload_a");
    }

    private static String conductorClause(MotorDuty duty) {
        if (duty.motor().hoist()) {
            return "NEC 610.14(E)";
        }
        return duty.count() > 1 ? "NEC 430.24" : "NEC 430.22";
    }

    private static String conductorNeed(MotorDuty duty) {
        return "its full-load current of " + HUNDREDTHS.amps(duty.lineAmps())
                + (duty.motor().hoist() ? "" : ", 125 % of one motor,");
    }

    private static void breaker(MotorDuty duty, Remarks findings) {
        Load load = duty.load();
        double table = duty.breakerAmps();
        double utmost = duty.utmostBreakerAmps();
        String motor = "motor " + Phrase.quoted(load.id()) + " has a full-load current of "
                + HUNDREDTHS.amps(duty.lineAmps()) + ", its breaker of " + HUNDREDTHS.amps(load.breakerAmps());
        String clause = duty.count() > 1 ? "NEC 430.53(C) (from memory)" : ABOVE_TABLE;
        findings.add(new Quantity(load.id(), "rating of the motor's breaker", load.breakerAmps(), "A")
                .atMost(table, clause));
        findings.add(new Quantity(
                        load.id(),
                        "115 % of the motor's full-load current",
                        MotorBranch.DISCONNECT_RATIO * duty.lineAmps(),
                        "A")
                .atMost(load.breakerAmps(), "NEC 430.110(A) (from memory)"));
        if (load.breakerAmps() > utmost + 1e-9) {
            findings.add(Remark.inAmps(ID, load.id(), load.breakerAmps(), utmost)
                    .kind("breaker-far-above-table")
                    .grade(Grade.BREAKS)
                    .clause(clause)
                    .message(motor + " is more than the " + HUNDREDTHS.amps(utmost)
                            + " that are allowed where it does not start otherwise")
                    .cure("take " + HUNDREDTHS.amps(table))
                    .build());
        } else if (load.breakerAmps() > table + 1e-9) {
            findings.add(Remark.inAmps(ID, load.id(), load.breakerAmps(), table)
                    .kind("breaker-above-table")
                    .grade(Grade.EXCEEDS_RECOMMENDATION)
                    .clause(clause)
                    .message(motor + " is more than the " + HUNDREDTHS.amps(table) + " of the table, allowed up to "
                            + HUNDREDTHS.amps(utmost) + " only where the motor does not start with less")
                    .cure("take " + HUNDREDTHS.amps(table))
                    .build());
        } else if (load.breakerAmps() < duty.lineAmps() - 1e-9) {
            findings.add(Remark.inAmps(ID, load.id(), duty.lineAmps(), load.breakerAmps())
                    .kind("breaker-below-full-load")
                    .grade(Grade.BREAKS)
                    .clause("NEC 430.52(B)")
                    .message(motor + " does not carry it")
                    .cure("take up to " + HUNDREDTHS.amps(table))
                    .build());
        } else if (load.breakerAmps() < MotorBranch.DISCONNECT_RATIO * duty.lineAmps() - 1e-9) {
            findings.add(
                    Remark.inAmps(ID, load.id(), MotorBranch.DISCONNECT_RATIO * duty.lineAmps(), load.breakerAmps())
                            .kind("breaker-below-disconnecting-size")
                            .grade(Grade.EXCEEDS_RECOMMENDATION)
                            .clause("NEC 430.110(A) (from memory)")
                            .message(motor + " is less than 115 % of it, which a breaker that disconnects a motor has")
                            .cure("take up to " + HUNDREDTHS.amps(table))
                            .build());
        }
    }

    /** Whether there is a table to hold the cable against. */
    private static boolean carries(
            Layout layout, MotorDuty duty, Cable cable, double needed, String what, String clause, Remarks findings) {
        Load load = duty.load();
        CableRun run = CableRun.of(layout.project(), cable, load.breakerAmps()).orElseThrow();
        int loaded = load.poles() == 3 ? 3 : 2;
        Optional<Carrying> carrying = run.carrying(loaded, loaded);
        carrying.ifPresent(each -> {
            findings.add(new Quantity(load.id(), "ampacity", each.amps(), "A", Optional.of(each.text()))
                    .atLeast(needed, clause));
            if (needed > each.amps() + 1e-9) {
                findings.add(Remark.inAmps(ID, load.id(), needed, each.amps())
                        .kind("cable-too-small")
                        .grade(Grade.BREAKS)
                        .clause(clause)
                        .message("the cable of motor " + Phrase.quoted(load.id()) + " (" + run.text() + ") carries "
                                + HUNDREDTHS.amps(each.amps(), needed) + " (" + each.text() + "), " + what + " needs "
                                + HUNDREDTHS.amps(needed, each.amps()))
                        .cure("take a larger size")
                        .build());
            }
        });
        return carrying.isPresent();
    }

    /** Whether nameplate and overload device are stated; the setting of each motor's own. */
    private static boolean overload(MotorDuty duty, Remarks findings) {
        if (duty.motor().nameplateAmps().isEmpty()
                || duty.motor().overloadAmps().isEmpty()) {
            return false;
        }
        double nameplate = duty.motor().nameplateAmps().getAsDouble();
        double set = duty.motor().overloadAmps().getAsDouble();
        double most = MotorBranch.overloadAmps(nameplate, duty.motor().serviceFactor());
        double utmost = MotorBranch.utmostOverloadAmps(nameplate, duty.motor().serviceFactor());
        findings.add(new Quantity(duty.load().id(), "setting of the overload device", set, "A")
                .atMost(most, "NEC 430.32(A)(1) and (C)"));
        findings.add(new Quantity(duty.load().id(), "current on the motor's nameplate", nameplate, "A")
                .atMost(set, "NEC 430.32(A)(1)"));
        String device = "the overload device of motor "
                + Phrase.quoted(duty.load().id()) + " is set to " + HUNDREDTHS.amps(set);
        if (set > most + 1e-9) {
            findings.add(Remark.inAmps(ID, duty.load().id(), set, set > utmost + 1e-9 ? utmost : most)
                    .kind("overload-set-too-high")
                    .grade(set > utmost + 1e-9 ? Grade.BREAKS : Grade.EXCEEDS_RECOMMENDATION)
                    .clause("NEC 430.32(A)(1) and (C)")
                    .message(device + ", allowed are " + HUNDREDTHS.amps(most) + ", and up to "
                            + HUNDREDTHS.amps(utmost) + " only where the motor does not start with less")
                    .cure("set " + HUNDREDTHS.amps(most))
                    .build());
        } else if (set < nameplate - 1e-9) {
            findings.add(Remark.inAmps(ID, duty.load().id(), nameplate, set)
                    .kind("overload-set-too-low")
                    .grade(Grade.EXCEEDS_RECOMMENDATION)
                    .clause("NEC 430.32(A)(1)")
                    .message(device + ", less than the nameplate's " + HUNDREDTHS.amps(nameplate)
                            + ": it trips at full load")
                    .cure("set up to " + HUNDREDTHS.amps(most))
                    .build());
        }
        return true;
    }

    /** Ib ≤ setting of the overload device ≤ Iz, where one is stated; without one the general checks hold its breaker. */
    private static void iec(Layout layout, List<MotorDuty> motors, Remarks findings) {
        List<String> cables = new ArrayList<>();
        List<String> tables = new ArrayList<>();
        List<String> all = new ArrayList<>();
        for (MotorDuty duty : motors) {
            all.add(duty.load().id());
            if (duty.motor().overloadAmps().isEmpty()) {
                continue;
            }
            double set = duty.count() * duty.motor().overloadAmps().getAsDouble();
            findings.add(new Quantity(
                            duty.load().id(),
                            "running current at the overload device",
                            duty.load().runningAmps(),
                            "A")
                    .atMost(set, "IEC 60364-4-43 clause 433.1"));
            if (set < duty.load().runningAmps() - 1e-9) {
                findings.add(Remark.inAmps(ID, duty.load().id(), duty.load().runningAmps(), set)
                        .kind("overload-set-too-low")
                        .grade(Grade.BREAKS)
                        .clause("IEC 60364-4-43 clause 433.1")
                        .message("motor " + Phrase.quoted(duty.load().id()) + " runs at "
                                + HUNDREDTHS.amps(duty.load().runningAmps()) + ", its overload device is set to "
                                + HUNDREDTHS.amps(set) + ": it trips")
                        .cure("set it to the nameplate's current")
                        .build());
            }
            Optional<Cable> cable = duty.load().circuit().flatMap(Circuit::cable);
            if (cable.isEmpty()) {
                cables.add(duty.load().id());
            } else if (!carries(
                    layout,
                    duty,
                    cable.get(),
                    set,
                    "the setting of its overload device",
                    "IEC 60364-4-43 clause 433.1",
                    findings)) {
                tables.add(duty.load().id());
            }
        }
        findings.notChecked(ID, cables, "circuit.cable");
        findings.notChecked(ID, tables, "a verified table for this size, metal, temperature and method");
        findings.notChecked(
                ID,
                all,
                "the makers' tables for breaker, contactor and overload device together (IEC 60947-4-1 type 1 or 2; "
                        + "IEC 60364-4-43 clause 435)");
    }
}
