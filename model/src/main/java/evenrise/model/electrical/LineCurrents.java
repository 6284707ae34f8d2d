package evenrise.model.electrical;

import evenrise.model.project.Phase;
import java.util.List;

/**
 * The fundamental line currents of a three-phase node as phasors, with phase A's voltage to neutral as the reference. A
 * one-pole load's current lags its phase's voltage; a two-pole load's lags the voltage between its lines and leaves by the
 * other line; a three-pole load draws the same on all, each behind its phase. A load's current on a line is counted as its
 * fundamental.
 */
public final class LineCurrents {
    private static final double THIRD_TURN = 2 * Math.PI / 3;
    private final Phasor[] lines = {Phasor.ZERO, Phasor.ZERO, Phasor.ZERO};

    /**
     * Adds a load.
     *
     * @param phases that its poles touch, different ones
     * @param amps rms fundamental in each of its lines
     * @param powerFactor displacement power factor, lagging, in (0, 1]
     */
    public void add(List<Phase> phases, double amps, double powerFactor) {
        double lag = Math.acos(powerFactor);
        if (phases.size() == 2) {
            Phasor between = Phasor.polar(1, angle(phases.get(0)))
                    .plus(Phasor.polar(1, angle(phases.get(1))).times(-1));
            Phasor current = Phasor.polar(amps, between.angleRadians() - lag);
            add(phases.get(0), current);
            add(phases.get(1), current.times(-1));
        } else {
            phases.forEach(phase -> add(phase, Phasor.polar(amps, angle(phase) - lag)));
        }
    }

    public Phasor line(Phase phase) {
        return lines[phase.ordinal()];
    }

    public SymmetricalComponents components() {
        return SymmetricalComponents.of(lines[0], lines[1], lines[2]);
    }

    private void add(Phase phase, Phasor current) {
        lines[phase.ordinal()] = lines[phase.ordinal()].plus(current);
    }

    private static double angle(Phase phase) {
        return -THIRD_TURN * phase.ordinal();
    }
}
