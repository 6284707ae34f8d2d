package evenrise.model.electrical;

import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;

/**
 * Rms current in a neutral conductor, from the one-pole loads that return through it. A load of more poles returns
 * through its lines and adds nothing.
 *
 * <p>A fundamental stands at its phase's angle less its lag: A at 0°, B at −120°, C at −240° on three-phase; A at 0°, B at
 * −180° on split-phase. Third harmonics of the three phases coincide, so they add as numbers; those of the two legs of
 * split-phase oppose each other like the fundamentals; those of a single phase add. Equal phase between the harmonics of
 * different loads is assumed, which is the worst case on three-phase and single-phase, but lets opposite legs cancel. No
 * other harmonic is counted.
 */
public final class NeutralCurrent {
    private final PhaseSystem system;
    private double real;
    private double imaginary;
    private double third;

    /** No current yet. */
    public NeutralCurrent(PhaseSystem system) {
        this.system = system;
    }

    /**
     * What one load adds, to be summed component by component.
     *
     * @param realAmps in phase with phase A
     * @param imaginaryAmps a quarter period ahead of phase A
     * @param thirdAmps third harmonic, signed
     */
    public record Share(double realAmps, double imaginaryAmps, double thirdAmps) {}

    /**
     * The share of a one-pole load.
     *
     * @param runningAmps rms current, fundamental and third harmonic together
     * @param lag of the fundamental behind its phase's voltage
     * @param thirdHarmonic third harmonic over fundamental (not over {@code runningAmps})
     */
    public static Share share(PhaseSystem system, Phase phase, double runningAmps, Lag lag, double thirdHarmonic) {
        double fundamental = runningAmps / Math.sqrt(1 + thirdHarmonic * thirdHarmonic);
        double angle = PhaseAngle.radians(system, phase) - lag.radians();
        double sign = system == PhaseSystem.SPLIT_PHASE && phase != Phase.A ? -1 : 1;
        return new Share(
                fundamental * Math.cos(angle), fundamental * Math.sin(angle), sign * thirdHarmonic * fundamental);
    }

    /** Adds a one-pole load; see {@link #share}. */
    public void add(Phase phase, double runningAmps, Lag lag, double thirdHarmonic) {
        Share share = share(system, phase, runningAmps, lag, thirdHarmonic);
        real += share.realAmps();
        imaginary += share.imaginaryAmps();
        third += share.thirdAmps();
    }

    /** Adds a bare fundamental. */
    public void addFundamental(Phase phase, double amps, Lag lag) {
        double angle = PhaseAngle.radians(system, phase) - lag.radians();
        real += amps * Math.cos(angle);
        imaginary += amps * Math.sin(angle);
    }

    /** Fundamentals by phasor, third harmonics as a number, the two in quadrature. */
    public double amps() {
        return Math.hypot(Math.hypot(real, imaginary), third);
    }
}
