package evenrise.model.review;

/**
 * What one cable carries.
 *
 * @param loaded conductors of its own that carry current
 * @param thirdPercent third harmonic, of the line current
 */
record Duty(
        String place,
        String label,
        double lineAmps,
        double breakerAmps,
        boolean isContinuous,
        boolean isFullyRated,
        int loaded,
        double thirdPercent,
        boolean isBranch) {}
