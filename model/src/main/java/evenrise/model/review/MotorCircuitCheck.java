package evenrise.model.review;

import evenrise.model.electrical.motor.MotorBranch;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Cable;
import evenrise.model.project.Circuit;
import evenrise.model.project.Electrical;
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
    public void review(Layout layout, Findings findings) {
        List<MotorDuty> motors = layout.project().loads().stream()
                .flatMap(load -> MotorDuty.of(layout, load).stream())
                .toList();
        Optional<Practice> practice = layout.project().electrical().flatMap(Electrical::practice);
        if (motors.isEmpty()) {
            return;
        }
        if (practice.isEmpty()) {
            findings.notCheckedAnywhere(
                    ID,
                    Findings.PLANT,
                    motors.stream().map(duty -> duty.load().id()).toList(),
                    "electrical.practice");
            return;
        }
        motors.forEach(duty -> findings.made(ID, duty.load().id()));
        if (practice.get() == Practice.NEC) {
            nec(layout, motors, findings);
        } else {
            iec(layout, motors, findings);
        }
    }

    private static void nec(Layout layout, List<MotorDuty> motors, Findings findings) {
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
        return "its full-load current of " + Say.amps(duty.lineAmps())
                + (duty.motor().hoist() ? "" : ", 125 % of one motor,");
    }

    private static void breaker(MotorDuty duty, Findings findings) {
        Load load = duty.load();
        double table = duty.breakerAmps();
        double utmost = duty.utmostBreakerAmps();
        String motor = "motor " + Say.quoted(load.id()) + " has a full-load current of " + Say.amps(duty.lineAmps())
                + ", its breaker of " + Say.amps(load.breakerAmps());
        String clause = duty.count() > 1 ? "NEC 430.53(C) (from memory)" : ABOVE_TABLE;
        if (load.breakerAmps() > utmost + 1e-9) {
            findings.add(remark(
                    "breaker-far-above-table",
                    Grade.BREAKS,
                    load,
                    load.breakerAmps(),
                    utmost,
                    clause,
                    motor + " is more than the " + Say.amps(utmost)
                            + " that are allowed where it does not start otherwise",
                    "take " + Say.amps(table)));
        } else if (load.breakerAmps() > table + 1e-9) {
            findings.add(remark(
                    "breaker-above-table",
                    Grade.EXCEEDS_RECOMMENDATION,
                    load,
                    load.breakerAmps(),
                    table,
                    clause,
                    motor + " is more than the " + Say.amps(table) + " of the table, allowed up to " + Say.amps(utmost)
                            + " only where the motor does not start with less",
                    "take " + Say.amps(table)));
        } else if (load.breakerAmps() < duty.lineAmps() - 1e-9) {
            findings.add(remark(
                    "breaker-below-full-load",
                    Grade.BREAKS,
                    load,
                    duty.lineAmps(),
                    load.breakerAmps(),
                    "NEC 430.52(B)",
                    motor + " does not carry it",
                    "take up to " + Say.amps(table)));
        } else if (load.breakerAmps() < MotorBranch.DISCONNECT_RATIO * duty.lineAmps() - 1e-9) {
            findings.add(remark(
                    "breaker-below-disconnecting-size",
                    Grade.EXCEEDS_RECOMMENDATION,
                    load,
                    MotorBranch.DISCONNECT_RATIO * duty.lineAmps(),
                    load.breakerAmps(),
                    "NEC 430.110(A) (from memory)",
                    motor + " is less than 115 % of it, which a breaker that disconnects a motor has",
                    "take up to " + Say.amps(table)));
        }
    }

    /** Whether there is a table to hold the cable against. */
    private static boolean carries(
            Layout layout, MotorDuty duty, Cable cable, double needed, String what, String clause, Findings findings) {
        Load load = duty.load();
        CableRun run = CableRun.of(layout.project(), cable, load.breakerAmps()).orElseThrow();
        int loaded = load.poles() == 3 ? 3 : 2;
        Optional<Carrying> carrying = run.carrying(loaded, loaded);
        carrying.ifPresent(each -> {
            findings.add(new Quantity(load.id(), "ampacity", each.amps(), "A", Optional.of(each.text())));
            if (needed > each.amps() + 1e-9) {
                findings.add(remark(
                        "cable-too-small",
                        Grade.BREAKS,
                        load,
                        needed,
                        each.amps(),
                        clause,
                        "the cable of motor " + Say.quoted(load.id()) + " (" + run.text() + ") carries "
                                + Say.amps(each.amps(), needed) + " (" + each.text() + "), " + what + " needs "
                                + Say.amps(needed, each.amps()),
                        "take a larger size"));
            }
        });
        return carrying.isPresent();
    }

    /** Whether nameplate and overload device are stated; the setting of each motor's own. */
    private static boolean overload(MotorDuty duty, Findings findings) {
        if (duty.motor().nameplateAmps().isEmpty()
                || duty.motor().overloadAmps().isEmpty()) {
            return false;
        }
        double nameplate = duty.motor().nameplateAmps().getAsDouble();
        double set = duty.motor().overloadAmps().getAsDouble();
        double most = MotorBranch.overloadAmps(nameplate, duty.motor().serviceFactor());
        double utmost = MotorBranch.utmostOverloadAmps(nameplate, duty.motor().serviceFactor());
        String device = "the overload device of motor " + Say.quoted(duty.load().id()) + " is set to " + Say.amps(set);
        if (set > most + 1e-9) {
            findings.add(remark(
                    "overload-set-too-high",
                    set > utmost + 1e-9 ? Grade.BREAKS : Grade.EXCEEDS_RECOMMENDATION,
                    duty.load(),
                    set,
                    set > utmost + 1e-9 ? utmost : most,
                    "NEC 430.32(A)(1) and (C)",
                    device + ", allowed are " + Say.amps(most) + ", and up to " + Say.amps(utmost)
                            + " only where the motor does not start with less",
                    "set " + Say.amps(most)));
        } else if (set < nameplate - 1e-9) {
            findings.add(remark(
                    "overload-set-too-low",
                    Grade.EXCEEDS_RECOMMENDATION,
                    duty.load(),
                    nameplate,
                    set,
                    "NEC 430.32(A)(1)",
                    device + ", less than the nameplate's " + Say.amps(nameplate) + ": it trips at full load",
                    "set up to " + Say.amps(most)));
        }
        return true;
    }

    /** Ib ≤ setting of the overload device ≤ Iz, where one is stated; without one the general checks hold its breaker. */
    private static void iec(Layout layout, List<MotorDuty> motors, Findings findings) {
        List<String> cables = new ArrayList<>();
        List<String> tables = new ArrayList<>();
        List<String> all = new ArrayList<>();
        for (MotorDuty duty : motors) {
            all.add(duty.load().id());
            if (duty.motor().overloadAmps().isEmpty()) {
                continue;
            }
            double set = duty.count() * duty.motor().overloadAmps().getAsDouble();
            if (set < duty.load().runningAmps() - 1e-9) {
                findings.add(remark(
                        "overload-set-too-low",
                        Grade.BREAKS,
                        duty.load(),
                        duty.load().runningAmps(),
                        set,
                        "IEC 60364-4-43 clause 433.1",
                        "motor " + Say.quoted(duty.load().id()) + " runs at "
                                + Say.amps(duty.load().runningAmps()) + ", its overload device is set to "
                                + Say.amps(set) + ": it trips",
                        "set it to the nameplate's current"));
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

    private static Remark remark(
            String kind,
            Grade grade,
            Load load,
            double figure,
            double limit,
            String clause,
            String message,
            String cure) {
        return Remark.builder()
                .check(ID)
                .kind(kind)
                .grade(grade)
                .place(load.id())
                .figure(figure)
                .limit(limit)
                .unit("A")
                .clause(clause)
                .message(message)
                .cure(cure)
                .build();
    }
}
