package evenrise.model.review;

import evenrise.model.electrical.LockedRotor;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Equipment;
import evenrise.model.project.Load;
import evenrise.model.project.Motor;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Whether the inrush that the project states for a motor covers what its nameplate allows at standstill. */
final class MotorStartCheck implements ElectricalCheck {
    private static final String ID = "motor-start";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Findings findings) {
        List<String> unknown = new ArrayList<>();
        for (Load load : layout.project().loads()) {
            load.equipment().flatMap(Equipment::motor).ifPresent(motor -> {
                OptionalDouble lockedRotor = lockedRotorAmps(layout.project(), load, motor);
                if (lockedRotor.isEmpty()) {
                    unknown.add(load.id());
                } else {
                    review(load, lockedRotor.getAsDouble(), findings);
                }
            });
        }
        findings.notChecked(ID, unknown, "equipment.motor.locked_rotor_a, or horsepower and code_letter");
    }

    private static OptionalDouble lockedRotorAmps(Project project, Load load, Motor motor) {
        if (motor.lockedRotorAmps().isPresent()
                || motor.codeLetter().isEmpty()
                || motor.horsepower().isEmpty()) {
            return motor.lockedRotorAmps();
        }
        return OptionalDouble.of(LockedRotor.greatestAmps(
                motor.codeLetter().get(), motor.horsepower().getAsDouble(), Demand.voltAmpsPerAmp(project, load)));
    }

    private static void review(Load load, double lockedRotorAmps, Findings findings) {
        double peak = Math.sqrt(2) * lockedRotorAmps;
        findings.add(new Quantity(load.id(), "locked-rotor current", lockedRotorAmps, "A"));
        if (peak > load.inrushAmps()) {
            findings.add(Remark.builder()
                    .check(ID)
                    .grade(Grade.EXCEEDS_RECOMMENDATION)
                    .place(load.id())
                    .figure(peak)
                    .limit(load.inrushAmps())
                    .unit("A")
                    .clause("NEC 430.7(B)")
                    .message("motor " + Say.quoted(load.id()) + " may draw " + Say.amps(lockedRotorAmps)
                            + " rms at standstill, a crest of " + Say.amps(peak, load.inrushAmps())
                            + " before any offset; inrush_peak_a states " + Say.amps(load.inrushAmps(), peak)
                            + ". Maybe raise it, and inrush_half_ms to half the run-up time.")
                    .build());
        }
    }
}
