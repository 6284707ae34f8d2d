package evenrise.solver.sample;

import evenrise.model.project.Role;

/**
 * A kind of equipment, from which loads are drawn.
 *
 * @param name what people call one of it, after the name of its place
 * @param breakerAmps rated current of its breaker
 * @param running rms running current in each pole, ampere; below 0.8 of the breaker
 * @param idleRatio current after power-up over running current
 * @param peakRatio instantaneous inrush peak over running current
 * @param half halving time of the inrush, millisecond
 * @param settle settling time, second
 */
record Kit(
        String name,
        Role role,
        int poles,
        double breakerAmps,
        Range running,
        double idleRatio,
        double powerFactor,
        double thirdHarmonic,
        double peakRatio,
        Range half,
        Range settle) {}
