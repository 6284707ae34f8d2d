package evenrise.model.review;

import evenrise.model.electrical.source.DipCourse;
import evenrise.model.electrical.source.Instant;
import evenrise.model.electrical.source.Terminals;
import java.util.Locale;

/** One switch-on as the voltage between some terminals of one node sees it. Percentages are of the nominal voltage. */
final class DipStep {
    /** The voltages at the switch-on and later, if nothing else is switched. */
    interface Aftermath {
        Instant after(double seconds);

        /** The longest of the inrushes'. */
        double halfLifeSeconds();

        /** Half a period. */
        double flatSeconds();
    }

    /**
     * Departures that a reading of a step is never greater than, and what of them stays: the rest dies down at least as
     * inrush of the longest half-life does.
     */
    private record Most(double lowPercent, double highPercent, double lastingLowPercent, double lastingHighPercent) {
        static Most of(Instant.Limits limits) {
            return new Most(
                    Math.min(100, limits.most().lowPercent() + Instant.ROUNDING_PERCENT),
                    limits.most().highPercent() + Instant.ROUNDING_PERCENT,
                    limits.lasting().lowPercent() + Instant.ROUNDING_PERCENT,
                    limits.lasting().highPercent() + Instant.ROUNDING_PERCENT);
        }

        Most or(Most other) {
            return new Most(
                    Math.max(lowPercent, other.lowPercent),
                    Math.max(highPercent, other.highPercent),
                    Math.max(lastingLowPercent, other.lastingLowPercent),
                    Math.max(lastingHighPercent, other.lastingHighPercent));
        }
    }

    /** As {@link DipCourse} finds times to a millionth of a second. */
    private static final double NEARLY_SECONDS = 1e-5;

    private final String node;
    private final String label;
    private final Terminals at;
    private final double atSeconds;
    private final String load;
    private final double steadyLowPercent;
    private final double statedDipPercent;
    private final Most byPhasors;
    private final Most byBound;
    private final Aftermath aftermath;
    private Dip phasors;
    private Dip bound;

    /**
     * @param label how messages call the node
     * @param load that switches, the greatest of those at the same instant that are fed between these terminals
     * @param steadyPercent the voltage before, of which no inrush is left
     * @param now as the load comes on
     */
    DipStep(
            String node,
            String label,
            Terminals at,
            double atSeconds,
            String load,
            double steadyPercent,
            Instant now,
            Aftermath aftermath) {
        this.node = node;
        this.label = label;
        this.at = at;
        this.atSeconds = atSeconds;
        this.load = load;
        this.steadyLowPercent = 100 - steadyPercent;
        this.statedDipPercent = Math.max(0, 100 - now.statedPercent(node, at) - steadyLowPercent);
        this.byPhasors = Most.of(now.limitsByPhasors(node, at));
        this.byBound = Most.of(now.limitsByBound(node, at)).or(byPhasors);
        this.aftermath = aftermath;
    }

    String node() {
        return node;
    }

    Terminals at() {
        return at;
    }

    double atSeconds() {
        return atSeconds;
    }

    String load() {
        return load;
    }

    /** By which the voltage is low already; negative where it is high. */
    double steadyLowPercent() {
        return steadyLowPercent;
    }

    private Most most(DipReading reading) {
        return reading == DipReading.PHASORS ? byPhasors : byBound;
    }

    /** More than a reading may make of {@link Dip#lowPercent}; known at once. */
    double mostLowPercent(DipReading reading) {
        return most(reading).lowPercent();
    }

    double mostHighPercent(DipReading reading) {
        return most(reading).highPercent();
    }

    double mostFallPercent(DipReading reading) {
        return Math.max(0, mostLowPercent(reading) - steadyLowPercent);
    }

    double mostRisePercent(DipReading reading) {
        return Math.max(0, mostHighPercent(reading) + steadyLowPercent);
    }

    /** More than {@link Dip#low} may make of the time below a level. */
    double mostSecondsLow(DipReading reading, double percent) {
        return mostSeconds(most(reading).lowPercent(), most(reading).lastingLowPercent(), percent);
    }

    double mostSecondsHigh(DipReading reading, double percent) {
        return mostSeconds(most(reading).highPercent(), most(reading).lastingHighPercent(), percent);
    }

    private double mostSeconds(double most, double lasting, double percent) {
        if (most <= percent) {
            return 0;
        }
        return lasting >= percent
                ? Double.POSITIVE_INFINITY
                : aftermath.flatSeconds()
                        + aftermath.halfLifeSeconds() * Math.log((most - lasting) / (percent - lasting)) / Math.log(2)
                        + NEARLY_SECONDS;
    }

    /** By phasors, at the worst angle that all inrush may have. */
    Dip phasors() {
        if (phasors == null) {
            phasors = dip(DipReading.PHASORS);
        }
        return phasors;
    }

    /** Whatever the angles of inrush are, and however steady loads answer. */
    Dip bound() {
        if (bound == null) {
            bound = dip(DipReading.BOUND);
        }
        return bound;
    }

    /** By phasors, all inrush at the power factor of its load in service. */
    double statedDipPercent() {
        return statedDipPercent;
    }

    /** As messages begin. */
    String text() {
        return String.format(
                Locale.ROOT, "when load '%s' comes on at %.2f s, %s %s", load, atSeconds, label, at.text());
    }

    private Dip dip(DipReading reading) {
        return new Dip(this, reading, course(new Low(reading)), course(new High(reading)));
    }

    private DipCourse course(DipCourse.Departure departure) {
        return new DipCourse(departure, aftermath.flatSeconds(), aftermath.halfLifeSeconds());
    }

    private final class Low implements DipCourse.Departure {
        private final DipReading reading;

        Low(DipReading reading) {
            this.reading = reading;
        }

        @Override
        public double percentAfter(double seconds) {
            return 100 - reading.leastPercent(aftermath.after(seconds), node, at);
        }

        @Override
        public boolean isAboveAfter(double seconds, double percent) {
            return reading.isBelow(aftermath.after(seconds), node, at, 100 - percent);
        }
    }

    private final class High implements DipCourse.Departure {
        private final DipReading reading;

        High(DipReading reading) {
            this.reading = reading;
        }

        @Override
        public double percentAfter(double seconds) {
            return reading.greatestPercent(aftermath.after(seconds), node, at) - 100;
        }

        @Override
        public boolean isAboveAfter(double seconds, double percent) {
            return reading.isAbove(aftermath.after(seconds), node, at, 100 + percent);
        }
    }
}
