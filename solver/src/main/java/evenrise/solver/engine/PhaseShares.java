package evenrise.solver.engine;

import java.util.Map;

/**
 * How much of each load had best sit on which phases, by its id: an entry for each mask of phases, with sum 1. A load that
 * is not named has no share anywhere, and wishes for nothing. What a search makes of it is guidance and never a rule.
 */
public record PhaseShares(Map<String, double[]> byLoad) {
    public static final PhaseShares NONE = new PhaseShares(Map.of());
}
