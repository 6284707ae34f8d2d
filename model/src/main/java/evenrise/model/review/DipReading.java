package evenrise.model.review;

/** How a switch-on is read: what phasors show, or what it may be at most. */
enum DipReading {
    PHASORS {
        @Override
        Dip of(DipStep step) {
            return step.phasors();
        }
    },
    BOUND {
        @Override
        Dip of(DipStep step) {
            return step.bound();
        }
    };

    abstract Dip of(DipStep step);
}
