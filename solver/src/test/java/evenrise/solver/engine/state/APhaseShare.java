package evenrise.solver.engine.state;

import evenrise.solver.engine.PhaseShares;
import java.util.HashMap;
import java.util.Map;
import java.util.SplittableRandom;

/** Shares by chance, of some loads nothing. */
public final class APhaseShare {
    private APhaseShare() {}

    public static PhaseShares drawn(CompiledProject compiled, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Map<String, double[]> shares = new HashMap<>();
        for (int load = 0; load < compiled.loadCount(); load++) {
            double[] share = random.doubles(1 << compiled.phaseCount).toArray();
            if (random.nextInt(5) > 0) {
                shares.put(compiled.loads[load].id(), share);
            }
        }
        return new PhaseShares(shares);
    }
}
