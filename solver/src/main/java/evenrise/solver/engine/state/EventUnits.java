package evenrise.solver.engine.state;

import evenrise.model.electrical.FullUse;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.project.Behaviour;
import evenrise.model.project.Load;

/**
 * What each load draws when something happens that does not depend on when it comes on, as nodes see it that see the same
 * part of it: in units, rounded once a load. docs/events.md has the arguments.
 */
final class EventUnits {
    /** In full use. */
    final long[] use;
    /** When a deep dip passes: the inrush beside what it is used for. */
    final long[] anew;
    /** When the mains return; as in a dip, but for motors that stay off. */
    final long[] returning;
    /** What is left of the excess when the sequence begins after the mains have returned. */
    final long[] later;
    /** What is left of the excess when another system begins. */
    final long[] another;

    private final double unitsPerAmp;
    private final double part;

    /** @param part of each load that is seen */
    EventUnits(CompiledProject compiled, double part) {
        this.part = part;
        unitsPerAmp = compiled.envelopes.unitsPerAmp;
        int count = compiled.loadCount();
        use = new long[count];
        anew = new long[count];
        returning = new long[count];
        later = new long[count];
        another = new long[count];
        Behaviour behaviour = compiled.project.behaviourOrDefault();
        double tolerance = compiled.project.timingToleranceSeconds();
        double wait = Math.max(0, behaviour.steadyWaitSeconds() - tolerance);
        double between = Math.max(0, behaviour.betweenSystemsSeconds() - 2 * tolerance);
        for (int load = 0; load < count; load++) {
            Load given = compiled.loads[load];
            InrushEnvelope envelope = InrushEnvelope.of(given, tolerance);
            boolean staysOff = behaviour.motorsStayOff() && given.isMotor();
            use[load] = units(FullUse.amps(given));
            anew[load] = units(FullUse.amps(given) + envelope.excessAmps());
            returning[load] = staysOff ? use[load] : anew[load];
            later[load] = staysOff ? 0 : units(envelope.excessLeftAmps(wait));
            another[load] = units(envelope.excessLeftAmps(between));
        }
    }

    private long units(double amps) {
        return Math.round(part * amps * unitsPerAmp);
    }
}
