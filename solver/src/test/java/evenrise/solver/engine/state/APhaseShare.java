package evenrise.solver.engine.state;

import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.solver.engine.PhaseShares;
import java.util.HashMap;
import java.util.Map;
import java.util.SplittableRandom;

/** Shares by chance, of some loads nothing. */
public final class APhaseShare {
    private APhaseShare() {}

    public static PhaseShares drawn(Project project, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int masks = 1 << project.supply().system().phases().size();
        Map<String, double[]> shares = new HashMap<>();
        for (Load load : project.loads()) {
            double[] share = random.doubles(masks).toArray();
            if (random.nextInt(5) > 0) {
                shares.put(load.id(), share);
            }
        }
        return new PhaseShares(shares);
    }
}
