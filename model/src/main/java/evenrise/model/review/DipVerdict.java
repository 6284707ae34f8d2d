package evenrise.model.review;

import evenrise.model.electrical.source.DipDecay;
import evenrise.model.electrical.source.Tolerance;
import evenrise.model.plan.Grade;
import evenrise.model.project.DipCriterion;
import java.util.Locale;
import java.util.Optional;

/** What one criterion says of one dip; there is none where the dip keeps it. */
record DipVerdict(Grade grade, double percent, double limitPercent, String clause, String text) {
    /** IEC 61000-3-3: 4 % base (from memory), 6 % where switched by hand or with a delay, 7 % where attended or at most twice a day. */
    private static final double CHANGE_PERCENT = 4;

    private static final double SELDOM_CHANGE_PERCENT = 7;

    /** EN 50160: rapid changes generally at most 5 %, up to 10 % (from memory). */
    private static final double RAPID_PERCENT = 5;

    private static final double MOST_RAPID_PERCENT = 10;

    /** ANSI C84.1: utilization voltage of range A, 108 V of 120 V. */
    private static final double RANGE_A_PERCENT = 10;

    static Optional<DipVerdict> of(DipCriterion criterion, StepDips.Step step, DipDecay decay) {
        return switch (criterion) {
            case IEC_61000_3_3 -> change(step);
            case EN_50160 -> rapid(step);
            case ANSI_C84_1 -> range(step);
            case ITI -> tolerance(Tolerance.ITI, "ITI curve (2000)", step, decay);
            case SEMI_F47 -> tolerance(Tolerance.SEMI_F47, "SEMI F47-0706", step, decay);
        };
    }

    private static Optional<DipVerdict> change(StepDips.Step step) {
        if (step.percent() <= CHANGE_PERCENT) {
            return Optional.empty();
        }
        boolean isTooMuch = step.percent() > SELDOM_CHANGE_PERCENT;
        double limit = isTooMuch ? SELDOM_CHANGE_PERCENT : CHANGE_PERCENT;
        return Optional.of(new DipVerdict(
                isTooMuch ? Grade.BREAKS : Grade.EXCEEDS_RECOMMENDATION,
                step.percent(),
                limit,
                "IEC 61000-3-3 clause 5",
                isTooMuch
                        ? "allowed are 7 % even where it happens at most twice a day"
                        : "allowed are 4 %, 6 % where switched by hand, 7 % at most twice a day"));
    }

    private static Optional<DipVerdict> rapid(StepDips.Step step) {
        if (step.percent() <= RAPID_PERCENT) {
            return Optional.empty();
        }
        boolean isTooMuch = step.percent() > MOST_RAPID_PERCENT;
        return Optional.of(new DipVerdict(
                isTooMuch ? Grade.BREAKS : Grade.EXCEEDS_RECOMMENDATION,
                step.percent(),
                isTooMuch ? MOST_RAPID_PERCENT : RAPID_PERCENT,
                "EN 50160 clause 4 (from memory)",
                "rapid changes are generally at most 5 %, at times 10 %"));
    }

    private static Optional<DipVerdict> range(StepDips.Step step) {
        return step.steadyPercent() <= RANGE_A_PERCENT
                ? Optional.empty()
                : Optional.of(new DipVerdict(
                        Grade.BREAKS,
                        step.steadyPercent(),
                        RANGE_A_PERCENT,
                        "ANSI C84.1 range A, utilization",
                        "the steady voltage is low by more than 10 %"));
    }

    private static Optional<DipVerdict> tolerance(
            Tolerance tolerance, String name, StepDips.Step step, DipDecay decay) {
        return tolerance
                .left(decay, step.steadyPercent())
                .map(band -> new DipVerdict(
                        Grade.BREAKS,
                        step.totalPercent(),
                        band.dipPercent(),
                        name,
                        String.format(
                                Locale.ROOT,
                                "it stays below %.0f %% for %.0f ms, allowed are %.0f ms",
                                100 - band.dipPercent(),
                                1000 * decay.secondsAbove(band.dipPercent() - step.steadyPercent()),
                                1000 * band.seconds())));
    }
}
