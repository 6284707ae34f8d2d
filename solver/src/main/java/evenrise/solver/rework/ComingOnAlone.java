package evenrise.solver.rework;

import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLimits;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.function.Supplier;

/** Whether a load may come on by itself while all others are on; looked at where somebody asks, and once. */
final class ComingOnAlone implements Predicate<String> {
    private final List<NodeLimits> limits;
    private final Supplier<Layout> plant;
    private final Map<String, Boolean> known = new HashMap<>();
    private Layout all;

    ComingOnAlone(List<NodeLimits> limits, Supplier<Layout> plant) {
        this.limits = limits;
        this.plant = plant;
    }

    @Override
    public boolean test(String load) {
        return known.computeIfAbsent(load, any -> RestartAlone.holds(load, all(), limits));
    }

    private Layout all() {
        if (all == null) {
            all = plant.get();
        }
        return all;
    }
}
