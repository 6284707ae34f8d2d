package evenrise.model.electrical;

import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import java.util.List;

/**
 * Running currents of one point of a distribution, summed by phase in three ways: R by magnitude, what a conductor is
 * rated for; Z, the fundamentals as phasors, against the voltage of phase A to neutral there; H, the third harmonics by
 * magnitude. A transformer needs Z and H to say what it draws.
 */
public final class LineSums {
    private static final int PHASES = Phase.values().length;

    private final PhaseSystem system;
    final double[] running = new double[PHASES];
    final Phasor[] fundamental = {Phasor.ZERO, Phasor.ZERO, Phasor.ZERO};
    final double[] third = new double[PHASES];

    /** No current yet. */
    public LineSums(PhaseSystem system) {
        this.system = system;
    }

    /**
     * Adds a load. The fundamental of a pole lies behind the voltage of its phase; that of a load of two poles behind the
     * voltage between them, and flows back in the second.
     *
     * @param phases of its poles, in their order
     * @param runningAmps rms current of each pole, fundamental and third harmonic together
     * @param thirdHarmonic third harmonic over fundamental
     */
    public void add(List<Phase> phases, double runningAmps, Lag lag, double thirdHarmonic) {
        double amps = runningAmps / Math.sqrt(1 + thirdHarmonic * thirdHarmonic);
        for (Phase phase : phases) {
            running[phase.ordinal()] += runningAmps;
            third[phase.ordinal()] += thirdHarmonic * amps;
        }
        if (phases.size() == 2) {
            double angle = PhaseAngle.radiansBetween(system, phases.get(0), phases.get(1)) - lag.radians();
            turn(phases.get(0), Phasor.polar(amps, angle));
            turn(phases.get(1), Phasor.polar(-amps, angle));
        } else {
            phases.forEach(phase -> turn(phase, Phasor.polar(amps, PhaseAngle.radians(system, phase) - lag.radians())));
        }
    }

    /** Adds what else the point feeds. */
    public void add(LineSums other) {
        for (int phase = 0; phase < PHASES; phase++) {
            running[phase] += other.running[phase];
            fundamental[phase] = fundamental[phase].plus(other.fundamental[phase]);
            third[phase] += other.third[phase];
        }
    }

    /** R: rms, by magnitude. */
    public double runningAmps(Phase phase) {
        return running[phase.ordinal()];
    }

    /** Rms of the fundamental by phasor and the third harmonic by magnitude: at most R. */
    public double meteredAmps(Phase phase) {
        return Math.hypot(fundamental[phase.ordinal()].length(), third[phase.ordinal()]);
    }

    /** Of the fundamentals, on three phases. */
    public SymmetricalComponents components() {
        return SymmetricalComponents.of(fundamental[0], fundamental[1], fundamental[2]);
    }

    /** H: third harmonics, by magnitude. */
    public double thirdAmps(Phase phase) {
        return third[phase.ordinal()];
    }

    private void turn(Phase phase, Phasor more) {
        fundamental[phase.ordinal()] = fundamental[phase.ordinal()].plus(more);
    }
}
