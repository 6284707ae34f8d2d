package evenrise.model.review;

import evenrise.model.contract.Decimals;
import evenrise.model.electrical.source.DipDecay;
import evenrise.model.electrical.source.Tolerance;
import evenrise.model.plan.Grade;
import evenrise.model.project.DipCriterion;
import java.util.Locale;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** What one criterion says of one dip; there is none where the dip keeps it. */
record DipVerdict(StepDips.Step step, Grade grade, double percent, double limitPercent, String clause, String text) {
    /** IEC 61000-3-3: 4 % base (from memory), 6 % where switched by hand or with a delay, 7 % where attended or at most twice a day. */
    private static final double CHANGE_PERCENT = 4;

    private static final double SELDOM_CHANGE_PERCENT = 7;

    /** EN 50160: rapid changes generally at most 5 %, up to 10 % (from memory). */
    private static final double RAPID_PERCENT = 5;

    private static final double MOST_RAPID_PERCENT = 10;

    /** ANSI C84.1: utilization voltage of range A, 108 V of 120 V. */
    static final double RANGE_A_PERCENT = 10;

    /** What a criterion allows of a change by itself: usually, and at most. */
    record Change(double usualPercent, double mostPercent, String clause) {
        /** Empty where a criterion goes by depth and time. */
        static Optional<Change> of(DipCriterion criterion) {
            return switch (criterion) {
                case IEC_61000_3_3 ->
                    Optional.of(new Change(CHANGE_PERCENT, SELDOM_CHANGE_PERCENT, "IEC 61000-3-3 clause 5"));
                case EN_50160 ->
                    Optional.of(new Change(RAPID_PERCENT, MOST_RAPID_PERCENT, "EN 50160 clause 4 (from memory)"));
                case ANSI_C84_1, ITI, SEMI_F47 -> Optional.empty();
            };
        }
    }

    /** By what a criterion judges first: the change, or the voltage that remains. */
    static ToDoubleFunction<StepDips.Step> gravity(DipCriterion criterion) {
        return switch (criterion) {
            case IEC_61000_3_3, EN_50160 -> StepDips.Step::percent;
            case ANSI_C84_1, ITI, SEMI_F47 -> StepDips.Step::totalPercent;
        };
    }

    /** Whether so deep a step can break a criterion at all, however long it lasts. */
    static boolean mayBreak(DipCriterion criterion, StepDips.Step step) {
        return switch (criterion) {
            case IEC_61000_3_3 -> step.percent() > CHANGE_PERCENT;
            case EN_50160 -> step.percent() > RAPID_PERCENT;
            case ANSI_C84_1 -> false;
            case ITI -> step.totalPercent() > Tolerance.ITI.leastPercent();
            case SEMI_F47 -> step.totalPercent() > Tolerance.SEMI_F47.leastPercent();
        };
    }

    static Optional<DipVerdict> of(DipCriterion criterion, StepDips.Step step, DipDecay decay) {
        return switch (criterion) {
            case IEC_61000_3_3 -> change(step);
            case EN_50160 -> rapid(step);
            // The steady voltage is judged by itself, at full use.
            case ANSI_C84_1 -> Optional.empty();
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
                step,
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
                step,
                isTooMuch ? Grade.BREAKS : Grade.EXCEEDS_RECOMMENDATION,
                step.percent(),
                isTooMuch ? MOST_RAPID_PERCENT : RAPID_PERCENT,
                "EN 50160 clause 4 (from memory)",
                "rapid changes are generally at most 5 %, at times 10 %"));
    }

    private static Optional<DipVerdict> tolerance(
            Tolerance tolerance, String name, StepDips.Step step, DipDecay decay) {
        return tolerance
                .left(decay, step.steadyPercent())
                .map(band -> new DipVerdict(
                        step,
                        Grade.BREAKS,
                        step.totalPercent(),
                        band.dipPercent(),
                        name,
                        String.format(
                                Locale.ROOT,
                                "it stays below %.0f %% %s, allowed are %.0f ms",
                                100 - band.dipPercent(),
                                lasting(decay.secondsAbove(band.dipPercent() - step.steadyPercent()), band.seconds()),
                                1000 * band.seconds())));
    }

    private static String lasting(double seconds, double allowedSeconds) {
        return Double.isFinite(seconds)
                ? "for " + Decimals.apart(1000 * seconds, 1000 * allowedSeconds, 0) + " ms"
                : "as long as the new load stays on";
    }
}
