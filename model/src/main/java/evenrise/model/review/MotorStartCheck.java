package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Load;
import evenrise.model.project.MotorStart;
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
    public void review(Layout layout, Remarks findings) {
        List<String> unknown = new ArrayList<>();
        for (Load load : layout.project().loads()) {
            MotorDuty.of(layout, load).ifPresent(duty -> {
                OptionalDouble lockedRotor = duty.lockedRotorAmps(layout);
                if (lockedRotor.isEmpty()) {
                    unknown.add(load.id());
                } else {
                    review(duty, lockedRotor.getAsDouble(), findings);
                }
            });
        }
        findings.notChecked(ID, unknown, "equipment.motor.locked_rotor_a, or horsepower and code_letter");
    }

    private static void review(MotorDuty duty, double lockedRotorAmps, Remarks findings) {
        Load load = duty.load();
        findings.made(ID, load.id());
        double peak = Math.sqrt(2) * lockedRotorAmps;
        Quantity standstill = new Quantity(load.id(), "crest of the locked-rotor current", peak, "A");
        findings.add(new Quantity(load.id(), "locked-rotor current", lockedRotorAmps, "A"));
        findings.add(
                duty.motor().startedBy() == MotorStart.BREAKER
                        ? standstill.atMost(load.inrushAmps(), "inrush_peak_a as stated; NEC 430.7(B)")
                        : standstill);
        // A motor behind a contactor of its own, open when the breaker closes, starts later: the check of its start in
        // service.
        if (duty.motor().startedBy() == MotorStart.BREAKER && peak > load.inrushAmps()) {
            findings.add(Remark.builder()
                    .check(ID)
                    .kind("understated-inrush")
                    .grade(Grade.EXCEEDS_RECOMMENDATION)
                    .place(load.id())
                    .figure(peak)
                    .limit(load.inrushAmps())
                    .unit("A")
                    .clause("NEC 430.7(B)")
                    .message("motor " + Phrase.quoted(load.id()) + " may draw " + HUNDREDTHS.amps(lockedRotorAmps)
                            + " rms at standstill, a crest of " + HUNDREDTHS.amps(peak, load.inrushAmps())
                            + " before any offset; inrush_peak_a states " + HUNDREDTHS.amps(load.inrushAmps(), peak))
                    .cure("raise it, and inrush_half_ms to half the run-up time; or state that a contactor"
                            + " of its own starts it (equipment.motor.started_by)")
                    .build());
        }
    }
}
