package evenrise.model.event;

/**
 * A load draws current from one instant to another.
 *
 * @param load its index, or that of a transformer's inrush
 * @param phases of its panel on which it draws
 * @param shares where that is seen
 * @param fromSeconds when it really begins
 * @param boundFromSeconds when it may begin at the earliest
 * @param toSeconds when it ends; infinite where it does not
 * @param inrushSeconds when the inrush began that it is still drawing; not a number where there was none
 * @param boundFullUntilSeconds until when that inrush must be counted in full
 * @param isInUse whether it draws what it is used for, beside what is left of its inrush
 */
record LoadDraw(
        int load,
        int[] phases,
        Shares shares,
        double fromSeconds,
        double boundFromSeconds,
        double toSeconds,
        double inrushSeconds,
        double boundFullUntilSeconds,
        boolean isInUse) {

    /** Whether it lasts at all: a breaker that opens as it closes draws nothing. */
    boolean lasts() {
        return toSeconds > fromSeconds;
    }

    LoadDraw until(double seconds) {
        return new LoadDraw(
                load,
                phases,
                shares,
                fromSeconds,
                boundFromSeconds,
                seconds,
                inrushSeconds,
                boundFullUntilSeconds,
                isInUse);
    }

    /** The same load, in use from {@code seconds} on. */
    LoadDraw inUseFrom(double seconds) {
        return new LoadDraw(
                load,
                phases,
                shares,
                seconds,
                seconds,
                Double.POSITIVE_INFINITY,
                inrushSeconds,
                boundFullUntilSeconds,
                true);
    }

    /** What is left of {@code excessAmps} by the instant at which the breaker really closed. */
    double excessAmps(double excessAmps, double halfLifeSeconds, double atSeconds) {
        return Double.isNaN(inrushSeconds)
                ? 0
                : excessAmps * Math.pow(2, -Math.max(0, atSeconds - inrushSeconds) / halfLifeSeconds);
    }

    /** What is left of it at most, whenever within the tolerance the breaker closed. */
    double boundExcessAmps(double excessAmps, double halfLifeSeconds, double atSeconds) {
        return Double.isNaN(inrushSeconds)
                ? 0
                : excessAmps * Math.pow(2, -Math.max(0, atSeconds - boundFullUntilSeconds) / halfLifeSeconds);
    }
}
