package evenrise.model.review;

import evenrise.model.electrical.source.DipCourse;

/** What one switch-on does to one voltage, in percent of the nominal one, as one reading has it: worked out when asked for. */
final class Dip {
    private final DipStep step;
    private final DipReading reading;
    private final DipCourse low;
    private final DipCourse high;

    Dip(DipStep step, DipReading reading, DipCourse low, DipCourse high) {
        this.step = step;
        this.reading = reading;
        this.low = low;
        this.high = high;
    }

    DipStep step() {
        return step;
    }

    /** Whatever the angles of inrush are, where phasors alone may keep what this does not. */
    boolean isByBound() {
        return reading == DipReading.BOUND;
    }

    /** Below nominal. */
    double lowPercent() {
        double own = low.percentAfter(0);
        // No bound is said to be less than what phasors show.
        return isByBound() && step.mostLowPercent(DipReading.PHASORS) > own
                ? Math.max(own, step.phasors().lowPercent())
                : own;
    }

    /** Above nominal; negative where it stays below. */
    double highPercent() {
        double own = high.percentAfter(0);
        return isByBound() && step.mostHighPercent(DipReading.PHASORS) > own
                ? Math.max(own, step.phasors().highPercent())
                : own;
    }

    DipCourse low() {
        return low;
    }

    DipCourse high() {
        return high;
    }

    /** By how much the step lowers it. */
    double fallPercent() {
        return Math.max(0, Math.min(100, lowPercent()) - step.steadyLowPercent());
    }

    /** By how much the step lifts it. */
    double risePercent() {
        return Math.max(0, highPercent() + step.steadyLowPercent());
    }

    double changePercent() {
        return Math.max(fallPercent(), risePercent());
    }
}
