package evenrise.model.review;

import evenrise.model.electrical.source.DipCourse;

/**
 * What one switch-on does to one voltage, in percent of the nominal one.
 *
 * @param lowPercent below nominal
 * @param highPercent above nominal; negative where it stays below
 */
record Dip(DipStep step, double lowPercent, double highPercent, DipCourse low, DipCourse high) {
    /** By how much the step lowers it. */
    double fallPercent() {
        return Math.max(0, Math.min(100, lowPercent) - step.steadyLowPercent());
    }

    /** By how much the step lifts it. */
    double risePercent() {
        return Math.max(0, highPercent + step.steadyLowPercent());
    }

    double changePercent() {
        return Math.max(fallPercent(), risePercent());
    }
}
