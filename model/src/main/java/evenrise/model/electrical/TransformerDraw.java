package evenrise.model.electrical;

import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import java.util.List;

/**
 * What an ideal transformer draws from the phases of its primary for what its secondary feeds. The ratio k is secondary
 * over primary voltage: to neutral of both, but for a single one that of the secondary to neutral over that across its
 * primary winding. Losses and magnetising current are left out. docs/model.md has the argument for each connection.
 */
public final class TransformerDraw {
    private static final int PHASES = Phase.values().length;
    private static final double ROOT_3 = Math.sqrt(3);

    private final TransformerConnection connection;
    private final PhaseSystem primary;
    private final PhaseSystem secondary;
    private final List<Phase> primaryPhases;
    private final double ratio;
    private final int shiftDegrees;

    private TransformerDraw(Transformer transformer, PhaseSystem primary, double primaryVolts) {
        this.connection = transformer.connection();
        this.primary = primary;
        this.secondary = transformer.secondary().system();
        this.primaryPhases = primaryPhases(transformer, primary);
        this.shiftDegrees = transformer.shiftDegrees();
        this.ratio = transformer.secondary().lineToNeutralVolts() / (primaryVolts * windingRatio());
    }

    /** @param primaryVolts to neutral, of what feeds it */
    public static TransformerDraw of(Transformer transformer, PhaseSystem primary, double primaryVolts) {
        return new TransformerDraw(transformer, primary, primaryVolts);
    }

    /** Phases that it draws from: those that a single one states, else the first two; all for the others. */
    public static List<Phase> primaryPhases(Transformer transformer, PhaseSystem primary) {
        if (transformer.connection() != TransformerConnection.SINGLE) {
            return primary.phases();
        }
        return transformer.primaryPhases().isEmpty()
                ? primary.phases().subList(0, Math.min(2, primary.phases().size()))
                : transformer.primaryPhases();
    }

    public List<Phase> primaryPhases() {
        return primaryPhases;
    }

    /** k. */
    public double ratio() {
        return ratio;
    }

    /** Whether the neutral of its primary takes what the neutral of its secondary returns, k times. */
    public boolean passesNeutralOn() {
        return connection == TransformerConnection.WYE_WYE;
    }

    /** Whether all that it draws returns by the neutral of its primary. */
    public boolean returnsByNeutral() {
        return connection == TransformerConnection.SINGLE && primaryPhases.size() == 1;
    }

    /**
     * What instantaneous currents of the secondary are on the primary, at most: no credit for angles or signs.
     *
     * @param envelopes by phase, none below 0; a load's part of one, as well as amperes
     */
    public double[] envelope(double[] envelopes) {
        double[] drawn = new double[PHASES];
        switch (connection) {
            case WYE_WYE ->
                primary.phases().forEach(phase -> drawn[phase.ordinal()] = ratio * envelopes[phase.ordinal()]);
            case DELTA_WYE ->
                primary.phases()
                        .forEach(phase -> drawn[phase.ordinal()] = ratio
                                / ROOT_3
                                * (envelopes[phase.ordinal()]
                                        + envelopes[partner(phase).ordinal()]));
            case SINGLE -> primaryPhases.forEach(phase -> drawn[phase.ordinal()] = ratio * sum(envelopes));
        }
        return drawn;
    }

    /**
     * Voltages to neutral of the secondary, of its nominal one, for those of the primary, of theirs; seen from any one
     * angle. A primary phase that is dead is taken to be at earth.
     *
     * @param volts of the primary, by phase
     */
    public Phasor[] voltages(Phasor[] volts) {
        Phasor[] made = {Phasor.ZERO, Phasor.ZERO, Phasor.ZERO};
        switch (connection) {
            case WYE_WYE -> secondary.phases().forEach(phase -> made[phase.ordinal()] = volts[phase.ordinal()]);
            case DELTA_WYE ->
                secondary
                        .phases()
                        .forEach(phase -> made[phase.ordinal()] = volts[phase.ordinal()]
                                .minus(volts[windingTo(phase).ordinal()])
                                .times(1 / ROOT_3));
            case SINGLE -> {
                Phasor first = volts[primaryPhases.get(0).ordinal()];
                Phasor across = primaryPhases.size() == 1
                        ? first
                        : first.minus(volts[primaryPhases.get(1).ordinal()]).times(1 / windingRatio());
                made[0] = across;
                made[1] = secondary.phases().size() > 1 ? across.times(-1) : Phasor.ZERO;
            }
        }
        return made;
    }

    /**
     * Primary phases of which each must be alive for a phase of the secondary to be at its full voltage: the ends of its
     * winding.
     */
    public List<Phase> windingPhases(Phase secondaryPhase) {
        return switch (connection) {
            case WYE_WYE -> List.of(secondaryPhase);
            case DELTA_WYE -> List.of(secondaryPhase, windingTo(secondaryPhase));
            case SINGLE -> primaryPhases;
        };
    }

    /** Whether a winding between a dead line and a live one is fed through another winding, as in a delta. */
    public boolean isDelta() {
        return connection == TransformerConnection.DELTA_WYE;
    }

    /** The other end of the winding that begins at a primary phase: under a delta-wye's secondary phase of that name. */
    private Phase windingTo(Phase phase) {
        List<Phase> phases = primary.phases();
        return phases.get(Math.floorMod(phase.ordinal() + (shiftDegrees > 0 ? 1 : -1), phases.size()));
    }

    /** What running currents of the secondary are on the primary: R, Z and H there. */
    public LineSums running(LineSums fed) {
        LineSums drawn = new LineSums(primary);
        switch (connection) {
            case WYE_WYE -> primary.phases().forEach(phase -> wye(phase.ordinal(), fed, drawn));
            case DELTA_WYE -> primary.phases().forEach(phase -> delta(phase, fed, drawn));
            case SINGLE -> single(fed, drawn);
        }
        return drawn;
    }

    /** Fundamentals that it draws from each line of its primary for one ampere in each of its secondary, as phasors. */
    public LineMatrix lines() {
        List<Phase> legs = secondary.phases();
        return LineMatrix.of((row, column) -> {
            Phase line = Phase.values()[row];
            Phase leg = Phase.values()[column];
            if (!primary.phases().contains(line) || !legs.contains(leg)) {
                return Phasor.ZERO;
            }
            return switch (connection) {
                case WYE_WYE -> line == leg ? new Phasor(ratio, 0) : Phasor.ZERO;
                case DELTA_WYE -> {
                    double sign = line == leg ? 1 : partner(line) == leg ? -1 : 0;
                    yield Phasor.polar(sign * ratio / ROOT_3, Math.toRadians(shiftDegrees));
                }
                case SINGLE -> {
                    int place = primaryPhases.indexOf(line);
                    double sign = (place == 1 ? -1 : 1) * (leg == Phase.A ? 1 : -1);
                    yield place < 0 ? Phasor.ZERO : Phasor.polar(sign * ratio, windingRadians());
                }
            };
        });
    }

    private double windingRadians() {
        return primaryPhases.size() == 1
                ? PhaseAngle.radians(primary, primaryPhases.get(0))
                : PhaseAngle.radiansBetween(primary, primaryPhases.get(0), primaryPhases.get(1));
    }

    private void wye(int phase, LineSums fed, LineSums drawn) {
        drawn.running[phase] = ratio * fed.running[phase];
        drawn.fundamental[phase] = fed.fundamental[phase].times(ratio);
        drawn.third[phase] = ratio * fed.third[phase];
    }

    /** A line of the primary feeds two windings: its current is the difference of what two legs of the secondary draw. */
    private void delta(Phase phase, LineSums fed, LineSums drawn) {
        int own = phase.ordinal();
        int other = partner(phase).ordinal();
        Phasor difference =
                fed.fundamental[own].plus(fed.fundamental[other].times(-1)).times(ratio / ROOT_3);
        drawn.fundamental[own] = difference.turned(Math.toRadians(shiftDegrees));
        drawn.third[own] = ratio / ROOT_3 * (fed.third[own] + fed.third[other]);
        drawn.running[own] = Math.hypot(difference.length(), drawn.third[own]);
    }

    /** One winding: what flows in it is the sum of the legs, that of the second turned round. */
    private void single(LineSums fed, LineSums drawn) {
        Phasor winding = fed.fundamental[0].plus(fed.fundamental[1].times(-1)).times(ratio);
        double angle = windingRadians();
        double sign = 1;
        for (Phase phase : primaryPhases) {
            drawn.running[phase.ordinal()] = ratio * sum(fed.running);
            drawn.fundamental[phase.ordinal()] = winding.turned(angle).times(sign);
            drawn.third[phase.ordinal()] = ratio * sum(fed.third);
            sign = -1;
        }
    }

    /** The other leg that a primary line of a delta-wye feeds: that before it (+30°), or after it. */
    private Phase partner(Phase phase) {
        List<Phase> phases = secondary.phases();
        int step = shiftDegrees > 0 ? -1 : 1;
        return phases.get(Math.floorMod(phase.ordinal() + step, phases.size()));
    }

    /** Voltage across the primary winding over that to neutral, of what feeds it. */
    private double windingRatio() {
        return connection == TransformerConnection.SINGLE && primaryPhases.size() == 2
                ? PhaseAngle.voltage(primary, primaryPhases.get(0))
                        .plus(PhaseAngle.voltage(primary, primaryPhases.get(1)).times(-1))
                        .length()
                : 1;
    }

    private static double sum(double[] amps) {
        return amps[0] + amps[1] + amps[2];
    }
}
