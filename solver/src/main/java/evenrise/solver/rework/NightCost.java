package evenrise.solver.rework;

import java.util.EnumMap;
import java.util.Map;

/**
 * What the changes to a plan cost at least, all made in one go: more stages ask for more isolations and shutdowns.
 *
 * @param counts how often each kind of work is needed
 * @param minutes of one crew
 */
public record NightCost(Map<MoveKind, Integer> counts, double minutes) {
    public NightCost {
        counts = new EnumMap<>(counts);
    }

    static NightCost of(Map<MoveKind, Integer> counts, WorkMinutes each) {
        double minutes = 0;
        for (Map.Entry<MoveKind, Integer> entry : counts.entrySet()) {
            minutes += entry.getValue() * each.of(entry.getKey());
        }
        return new NightCost(counts, minutes);
    }

    @Override
    public Map<MoveKind, Integer> counts() {
        return new EnumMap<>(counts);
    }

    public int count(MoveKind kind) {
        return counts.getOrDefault(kind, 0);
    }
}
