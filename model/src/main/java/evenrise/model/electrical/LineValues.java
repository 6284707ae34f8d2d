package evenrise.model.electrical;

import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import java.util.function.Function;

/** A complex value of each line conductor: its voltage to neutral, or its current. A line that a system lacks has none. */
public record LineValues(Phasor a, Phasor b, Phasor c) {
    public static final LineValues ZERO = new LineValues(Phasor.ZERO, Phasor.ZERO, Phasor.ZERO);

    /** Voltages of rms length {@code volts} in the order of rotation, A at no angle. */
    public static LineValues nominal(PhaseSystem system, double volts) {
        return of(phase -> system.phases().contains(phase)
                ? Phasor.polar(
                        volts, -2 * Math.PI * phase.ordinal() / system.phases().size())
                : Phasor.ZERO);
    }

    public static LineValues of(Function<Phase, Phasor> each) {
        return new LineValues(each.apply(Phase.A), each.apply(Phase.B), each.apply(Phase.C));
    }

    public Phasor line(Phase phase) {
        return switch (phase) {
            case A -> a;
            case B -> b;
            case C -> c;
        };
    }

    public LineValues plus(LineValues other) {
        return new LineValues(a.plus(other.a), b.plus(other.b), c.plus(other.c));
    }

    public LineValues minus(LineValues other) {
        return new LineValues(a.minus(other.a), b.minus(other.b), c.minus(other.c));
    }

    public LineValues times(Phasor factor) {
        return new LineValues(a.times(factor), b.times(factor), c.times(factor));
    }
}
