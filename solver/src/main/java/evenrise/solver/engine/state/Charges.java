package evenrise.solver.engine.state;

import evenrise.model.electrical.FullUse;
import evenrise.model.project.Load;
import evenrise.model.project.PlanEvent;

/**
 * What a broken hard rule costs on the score's hard level: how much it is broken, in milliamperes or milliseconds, and a
 * fixed amount a place where the rule is yes or no. The proportions only steer the search; a plan is feasible at zero.
 */
public final class Charges {
    /** A load without a place or without the output it needs: worse than any one broken place, but a way through. */
    public static final long UNASSIGNED = 40_000;
    /** One place where a yes-or-no rule is broken. */
    public static final long PLACE = 10_000;
    /** On top of the lateness itself, so that the last half millisecond still counts. */
    static final long LATE = 1_000;
    /** Times closer than this are equal, by the contract. */
    static final long TIME_TOLERANCE_MICROS = 500;

    private Charges() {}

    /**
     * A load without a place, where any current over a limit is better than that: on top of {@link #UNASSIGNED}, what the
     * greatest load can be charged for ratings, neutrals and inrush limits, in the sequence and in every event.
     */
    static long unassignedAtAnyCurrent(CompiledProject compiled) {
        int peaks = 1 + PlanEvent.values().length;
        int timesInOne =
                compiled.hasClocks ? 4 : 3; // that one sum may count it: beside another system's start once more
        double most = 0;
        for (int load = 0; load < compiled.loadCount(); load++) {
            Load given = compiled.loads[load];
            // A panel has one rating to keep, and what is to be left of it.
            double runningLimits = (2 * given.poles() + 1) * compiled.currents.scenes;
            double crest = FullUse.amps(given) + given.inrushAmps();
            most = Math.max(
                    most, widest(compiled, load) * (runningLimits * given.runningAmps() + peaks * timesInOne * crest));
        }
        return UNASSIGNED + overMilliAmps(most * Currents.NANO);
    }

    /** Nodes that see a load, each as many times as it grows on the way there, at most. */
    private static double widest(CompiledProject compiled, int load) {
        return compiled.allowedPanels[load].stream()
                .mapToDouble(panel -> compiled.tree.depth(panel) * compiled.tree.mostOf(panel))
                .max()
                .orElse(1);
    }

    /** Charge for coming on {@code earlyMicros} too early (or, of the whole sequence, ending too late). */
    public static long late(long earlyMicros) {
        return earlyMicros > TIME_TOLERANCE_MICROS ? LATE + earlyMicros / 1000 : 0;
    }

    /** Charge for {@code excessNano} over a limit in nanoamperes; a microampere is none, by the contract. */
    public static long overMilliAmps(double excessNano) {
        return excessNano > 1000 ? 1 + (long) (excessNano / 1e6) : 0;
    }
}
