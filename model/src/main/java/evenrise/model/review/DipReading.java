package evenrise.model.review;

import evenrise.model.electrical.source.Instant;
import evenrise.model.electrical.source.Terminals;

/** How a switch-on is read: what phasors show, or what it may be at most. */
enum DipReading {
    PHASORS {
        @Override
        Dip of(DipStep step) {
            return step.phasors();
        }

        @Override
        double leastPercent(Instant instant, String node, Terminals at) {
            return instant.leastPercentByPhasors(node, at);
        }

        @Override
        double greatestPercent(Instant instant, String node, Terminals at) {
            return instant.greatestPercentByPhasors(node, at);
        }

        @Override
        boolean isBelow(Instant instant, String node, Terminals at, double percent) {
            return instant.isBelowByPhasors(node, at, percent);
        }

        @Override
        boolean isAbove(Instant instant, String node, Terminals at, double percent) {
            return instant.isAboveByPhasors(node, at, percent);
        }
    },
    BOUND {
        @Override
        Dip of(DipStep step) {
            return step.bound();
        }

        @Override
        double leastPercent(Instant instant, String node, Terminals at) {
            return instant.leastPercentByBound(node, at);
        }

        @Override
        double greatestPercent(Instant instant, String node, Terminals at) {
            return instant.greatestPercentByBound(node, at);
        }

        @Override
        boolean isBelow(Instant instant, String node, Terminals at, double percent) {
            return instant.isBelowByBound(node, at, percent);
        }

        @Override
        boolean isAbove(Instant instant, String node, Terminals at, double percent) {
            return instant.isAboveByBound(node, at, percent);
        }
    };

    abstract Dip of(DipStep step);

    abstract double leastPercent(Instant instant, String node, Terminals at);

    abstract double greatestPercent(Instant instant, String node, Terminals at);

    /** Whether the least voltage is below a level. */
    abstract boolean isBelow(Instant instant, String node, Terminals at, double percent);

    /** Whether the greatest voltage is above a level. */
    abstract boolean isAbove(Instant instant, String node, Terminals at, double percent);
}
