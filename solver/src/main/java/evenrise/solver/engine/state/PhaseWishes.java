package evenrise.solver.engine.state;

import evenrise.model.project.Load;
import evenrise.solver.engine.PhaseShares;

/**
 * On which phases loads had best sit, and how much each of them matters: an amplifier by what it draws above its base as it
 * comes on, what is on before by its base, as parts of the mean of its like. Read-only.
 */
public final class PhaseWishes {
    private static final double UNITS = 1000;

    /** By load and mask of phases, in thousandths. */
    private final long[][] offUnits;

    PhaseWishes(CompiledProject compiled, PhaseShares shares) {
        offUnits = new long[compiled.loadCount()][1 << compiled.phaseCount];
        double[] sumAmps = new double[2];
        int[] count = new int[2];
        for (int load = 0; load < offUnits.length; load++) {
            int kind = comesLast(compiled, load) ? 1 : 0;
            sumAmps[kind] += amps(compiled, load);
            count[kind]++;
        }
        for (int load = 0; load < offUnits.length; load++) {
            int kind = comesLast(compiled, load) ? 1 : 0;
            double[] share = shares.byLoad().get(compiled.loads[load].id());
            double matters = sumAmps[kind] > 0 ? amps(compiled, load) * count[kind] / sumAmps[kind] : 0;
            for (int mask = 0; share != null && mask < offUnits[load].length; mask++) {
                offUnits[load][mask] = Math.round(UNITS * matters * (1 - share[mask]));
            }
        }
    }

    private static boolean comesLast(CompiledProject compiled, int load) {
        return compiled.switched[load] && compiled.role[load] == CompiledProject.AMPLIFIER;
    }

    private static double amps(CompiledProject compiled, int load) {
        Load of = compiled.loads[load];
        return comesLast(compiled, load) ? of.excessAmps() : of.baseAmps();
    }

    /** How far from its wish a load is on these phases, in thousandths of what one matters on average. */
    public long offUnits(int load, int mask) {
        return offUnits[load][mask];
    }

    /** The same as parts. */
    public static double parts(long units) {
        return units / UNITS;
    }
}
