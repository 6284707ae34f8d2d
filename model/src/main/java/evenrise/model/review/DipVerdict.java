package evenrise.model.review;

import evenrise.model.contract.Decimals;
import evenrise.model.electrical.source.DipCourse;
import evenrise.model.electrical.source.Tolerance;
import evenrise.model.plan.Grade;
import evenrise.model.project.DipCriterion;
import evenrise.model.project.Electrical;
import evenrise.model.project.Project;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** What one criterion says of one dip or swell; there is none where it is kept. */
record DipVerdict(Grade grade, double percent, double limitPercent, String clause, String text) {
    /** IEC 61000-3-3: 4 % base (from memory), 6 % where switched by hand or with a delay, 7 % where attended or at most twice a day. */
    private static final double CHANGE_PERCENT = 4;

    private static final double SELDOM_CHANGE_PERCENT = 7;

    /** EN 50160: rapid changes generally at most 5 %, up to 10 % (from memory). */
    private static final double RAPID_PERCENT = 5;

    private static final double MOST_RAPID_PERCENT = 10;

    /** EN 50160: at most 10 % above nominal (from memory). */
    static final double SWELL_PERCENT = 10;

    /** ANSI C84.1: utilization voltage of range A, 108 V to 126 V of 120 V. */
    static final double RANGE_A_PERCENT = 10;

    static final double RANGE_A_ABOVE_PERCENT = 5;

    /** What a criterion allows of a change by itself: usually, and at most. */
    record Change(double usualPercent, double mostPercent, String clause) {
        /** Of the criteria that the project names, the one that allows least. */
        static Optional<Change> strictest(Project project) {
            return project.electrical().map(Electrical::dipCriteria).orElse(List.of()).stream()
                    .flatMap(criterion -> of(criterion).stream())
                    .min(Comparator.comparingDouble(Change::usualPercent));
        }

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

    /** Which way a voltage goes. */
    enum Way {
        DIP,
        SWELL
    }

    /** By what a criterion judges first: the change, or how far the voltage is from nominal. */
    static ToDoubleFunction<Dip> gravity(DipCriterion criterion, Way way) {
        if (way == Way.DIP) {
            return isByChange(criterion) ? Dip::fallPercent : Dip::lowPercent;
        }
        return isByChange(criterion) ? Dip::risePercent : Dip::highPercent;
    }

    /**
     * Whether so great a dip or swell can break a criterion at all, however long it lasts.
     *
     * @param change by the step
     * @param departure from nominal
     */
    static boolean mayBreak(DipCriterion criterion, Way way, double change, double departure) {
        boolean isDip = way == Way.DIP;
        return switch (criterion) {
            case IEC_61000_3_3 -> change > CHANGE_PERCENT;
            case EN_50160 -> change > RAPID_PERCENT || !isDip && departure > SWELL_PERCENT;
            // The steady voltage is judged by itself, at full use.
            case ANSI_C84_1 -> false;
            case ITI -> departure > (isDip ? Tolerance.ITI : Tolerance.ITI_SWELL).leastPercent();
            case SEMI_F47 -> isDip && departure > Tolerance.SEMI_F47.leastPercent();
        };
    }

    static boolean mayBreak(DipCriterion criterion, Way way, Dip dip) {
        return way == Way.DIP
                ? mayBreak(criterion, way, dip.fallPercent(), dip.lowPercent())
                : mayBreak(criterion, way, dip.risePercent(), dip.highPercent());
    }

    /** Before a step is read. */
    static boolean mayBreak(DipCriterion criterion, Way way, DipStep step, DipReading reading) {
        boolean isDip = way == Way.DIP;
        double change = isDip ? step.mostFallPercent(reading) : step.mostRisePercent(reading);
        double departure = isDip ? step.mostLowPercent(reading) : step.mostHighPercent(reading);
        if (!mayBreak(criterion, way, change, departure) || isByChange(criterion)) {
            return mayBreak(criterion, way, change, departure);
        }
        Tolerance tolerance =
                criterion == DipCriterion.SEMI_F47 ? Tolerance.SEMI_F47 : isDip ? Tolerance.ITI : Tolerance.ITI_SWELL;
        return tolerance.bands().stream()
                .anyMatch(band -> (isDip
                                ? step.mostSecondsLow(reading, band.percent())
                                : step.mostSecondsHigh(reading, band.percent()))
                        > band.seconds());
    }

    /** More than {@link #gravity} may be, before a step is read. */
    static ToDoubleFunction<DipStep> mostGravity(DipCriterion criterion, Way way, DipReading reading) {
        if (way == Way.DIP) {
            return isByChange(criterion) ? step -> step.mostFallPercent(reading) : step -> step.mostLowPercent(reading);
        }
        return isByChange(criterion) ? step -> step.mostRisePercent(reading) : step -> step.mostHighPercent(reading);
    }

    private static boolean isByChange(DipCriterion criterion) {
        return criterion == DipCriterion.IEC_61000_3_3 || criterion == DipCriterion.EN_50160;
    }

    /** Of a dip that {@link #mayBreak} the criterion. */
    static Optional<DipVerdict> of(DipCriterion criterion, Way way, Dip dip) {
        double change = way == Way.DIP ? dip.fallPercent() : dip.risePercent();
        return switch (criterion) {
            case IEC_61000_3_3 -> Optional.of(change(change));
            case EN_50160 -> Optional.of(rapid(change, dip.highPercent()));
            case ANSI_C84_1 -> Optional.empty();
            case ITI ->
                way == Way.DIP
                        ? tolerance(Tolerance.ITI, "ITI curve (2000)", dip.lowPercent(), dip.low(), way)
                        : tolerance(
                                Tolerance.ITI_SWELL,
                                "ITI curve (2000), above nominal from memory",
                                dip.highPercent(),
                                dip.high(),
                                way);
            case SEMI_F47 -> tolerance(Tolerance.SEMI_F47, "SEMI F47-0706", dip.lowPercent(), dip.low(), way);
        };
    }

    private static DipVerdict change(double percent) {
        boolean isTooMuch = percent > SELDOM_CHANGE_PERCENT;
        return new DipVerdict(
                isTooMuch ? Grade.BREAKS : Grade.EXCEEDS_RECOMMENDATION,
                percent,
                isTooMuch ? SELDOM_CHANGE_PERCENT : CHANGE_PERCENT,
                "IEC 61000-3-3 clause 5",
                isTooMuch
                        ? "allowed are 7 % even where it happens at most twice a day"
                        : "allowed are 4 %, 6 % where switched by hand, 7 % at most twice a day");
    }

    private static DipVerdict rapid(double change, double highPercent) {
        if (highPercent > SWELL_PERCENT && change <= MOST_RAPID_PERCENT) {
            return new DipVerdict(
                    Grade.BREAKS,
                    highPercent,
                    SWELL_PERCENT,
                    "EN 50160 clause 4 (from memory)",
                    "allowed are at most 10 % above nominal");
        }
        boolean isTooMuch = change > MOST_RAPID_PERCENT;
        return new DipVerdict(
                isTooMuch ? Grade.BREAKS : Grade.EXCEEDS_RECOMMENDATION,
                change,
                isTooMuch ? MOST_RAPID_PERCENT : RAPID_PERCENT,
                "EN 50160 clause 4 (from memory)",
                "rapid changes are generally at most 5 %, at times 10 %");
    }

    private static Optional<DipVerdict> tolerance(
            Tolerance tolerance, String name, double percent, DipCourse course, Way way) {
        return tolerance
                .left(course)
                .map(band -> new DipVerdict(
                        Grade.BREAKS,
                        percent,
                        band.percent(),
                        name,
                        String.format(
                                Locale.ROOT,
                                "it stays %s %.0f %% %s, allowed are %.0f ms",
                                way == Way.DIP ? "below" : "above",
                                100 + (way == Way.DIP ? -1 : 1) * band.percent(),
                                lasting(course.secondsAbove(band.percent()), band.seconds()),
                                1000 * band.seconds())));
    }

    private static String lasting(double seconds, double allowedSeconds) {
        return Double.isFinite(seconds)
                ? "for " + Decimals.apart(1000 * seconds, 1000 * allowedSeconds, 0) + " ms"
                : "as long as the new load stays on";
    }
}
