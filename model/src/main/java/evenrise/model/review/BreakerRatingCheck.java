package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.electrical.breaker.ContinuousLoad;
import evenrise.model.electrical.breaker.ConventionalCurrents;
import evenrise.model.electrical.breaker.StandardRatings;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Circuit;
import evenrise.model.project.Equipment;
import evenrise.model.project.Load;
import evenrise.model.project.Practice;
import evenrise.model.rules.Layout;
import java.util.Optional;
import java.util.OptionalDouble;

/** Whether each breaker is made in its rating, and carries its load for as long as it runs. */
final class BreakerRatingCheck implements ElectricalCheck {
    private static final String ID = "breaker-rating";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        Optional<Practice> practice = findings.practice(
                ID, layout, layout.project().loads().stream().map(Load::id).toList());
        if (practice.isEmpty()) {
            return;
        }
        for (Load load : layout.project().loads()) {
            findings.made(ID, load.id());
            standard(load, practice.get(), findings);
            // Of motors by NEC practice, the check of their circuits says what their breaker may be.
            if (practice.get() == Practice.IEC
                    || load.equipment().flatMap(Equipment::motor).isEmpty()) {
                carries(load, practice.get(), findings);
            }
        }
    }

    private static void standard(Load load, Practice practice, Remarks findings) {
        if (StandardRatings.isStandard(practice, load.breakerAmps())) {
            return;
        }
        OptionalDouble next = StandardRatings.atLeast(practice, load.breakerAmps());
        String cure = next.isPresent() ? "take " + HUNDREDTHS.amps(next.getAsDouble()) : "";
        findings.add(Remark.builder()
                .check(ID)
                .kind("no-standard-rating")
                .grade(Grade.EXCEEDS_RECOMMENDATION)
                .place(load.id())
                .figure(load.breakerAmps())
                .limit(next)
                .unit("A")
                .clause(practice == Practice.NEC ? "NEC 240.6(A)" : "IEC 60898-1 clause 5.3.2 (clause from memory)")
                .message("the breaker of load " + Phrase.quoted(load.id()) + " is rated "
                        + HUNDREDTHS.amps(load.breakerAmps()) + ", which is no standard rating"
                        + (cure.isEmpty() ? "." : ""))
                .cure(cure)
                .build());
    }

    private static void carries(Load load, Practice practice, Remarks findings) {
        boolean isContinuous = load.circuit().map(Circuit::continuous).orElse(true);
        boolean isFullyRated = load.circuit().map(Circuit::fullyRated).orElse(false);
        double needed = practice == Practice.NEC
                ? ContinuousLoad.necAmps(load.runningAmps(), isContinuous, isFullyRated)
                : load.runningAmps();
        String clause = practice == Practice.NEC ? "NEC 210.20(A)" : "IEC 60364-4-43 clause 433.1";
        findings.add(new Quantity(load.id(), "rating that the load asks for", needed, "A")
                .atMost(load.breakerAmps(), clause));
        if (needed <= load.breakerAmps() + 1e-9) {
            return;
        }
        double trips = ConventionalCurrents.of(practice).tripsRatio() * load.breakerAmps();
        String rule =
                needed > load.runningAmps() ? ", 125 % of it are " + HUNDREDTHS.amps(needed, load.breakerAmps()) : "";
        String soon = load.runningAmps() >= trips ? "; it trips within its conventional time" : "";
        OptionalDouble next = StandardRatings.atLeast(practice, needed);
        findings.add(Remark.builder()
                .check(ID)
                .kind("too-small")
                .grade(Grade.BREAKS)
                .place(load.id())
                .figure(needed)
                .limit(load.breakerAmps())
                .unit("A")
                .clause(clause)
                .message("load " + Phrase.quoted(load.id()) + " runs at "
                        + HUNDREDTHS.amps(load.runningAmps(), load.breakerAmps()) + rule
                        + ", its breaker is rated " + HUNDREDTHS.amps(load.breakerAmps(), needed) + soon)
                .cure("split the load"
                        + (next.isPresent()
                                ? " or take " + HUNDREDTHS.amps(next.getAsDouble()) + " and its conductor"
                                : ""))
                .build());
    }
}
