package evenrise.solver.bounds;

import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.project.SlotLayout;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * How far from balance the supply's phases must be, and how far all panels' together. Reasons: a load with more than the
 * mean unbalances its own phase; phases whose currents come in whole units cannot share a sum that the number of phases does
 * not divide; and a phase that no panel has carries nothing.
 *
 * <p>Where every panel has all phases, the panels' deviations add up to at least the supply's: a sum of deviations is never
 * below the deviation of the sum. A panel that lacks a phase is judged by those that it has, so there each argument is
 * made again, of the panels themselves.
 */
final class LeastDeviation {
    private static final double UNITS_AN_AMP = 1e6;

    /** Running currents are sums of many; what rounding may have added is taken off. */
    private static final double ROUNDING_AMPS = 1e-9;

    private final Project project;
    private final int phases;
    /** How many phases each panel has, by its id. */
    private final Map<String, Integer> panels = new HashMap<>();

    private final Set<Phase> had = new HashSet<>();
    private double sumAmps;
    private long unit;
    private long units;
    private boolean isWhole = true;

    /** Time: loads and panels. */
    LeastDeviation(Project project) {
        this.project = project;
        this.phases = project.supply().system().phases().size();
        for (Panel panel : project.panels()) {
            List<Phase> own = new SlotLayout(panel, project.supply().system()).phases();
            panels.put(panel.id(), own.size());
            had.addAll(own);
        }
        for (Load load : project.loads()) {
            sumAmps += load.poles() * load.runningAmps();
            long each = Math.round(load.runningAmps() * UNITS_AN_AMP);
            isWhole &= Math.abs(each - load.runningAmps() * UNITS_AN_AMP) < 1e-4;
            unit = gcd(unit, each);
            units += load.poles() * each;
        }
    }

    /** Of the supply. */
    double supplyAmps() {
        double largest =
                project.loads().stream().mapToDouble(Load::runningAmps).max().orElse(0);
        double mean = sumAmps / phases;
        double byLargest = phases == 1 ? 0 : largest - mean;
        return proven(Math.max(had.size() < phases ? mean : byLargest, Math.max(byLargest, byUnits(phases))));
    }

    /** Whether each panel has all phases, so that the panels' deviations add up to at least the supply's. */
    boolean panelsAddUpToTheSupply() {
        return panels.values().stream().allMatch(count -> count == phases);
    }

    /** Of all panels together. */
    double panelsAmps() {
        if (panelsAddUpToTheSupply()) {
            return supplyAmps();
        }
        double byLargest = project.loads().stream()
                .mapToDouble(load -> load.runningAmps() - sumAmps / fewestPhases(load))
                .max()
                .orElse(0);
        // Of panels with different numbers of phases one kind can take what the other cannot divide.
        boolean areAlike = panels.values().stream().distinct().count() == 1;
        return proven(Math.max(
                byLargest, areAlike ? byUnits(panels.values().iterator().next()) : 0));
    }

    /** Of the panels that it may sit in. */
    private int fewestPhases(Load load) {
        return panels.entrySet().stream()
                .filter(panel -> load.panels().isEmpty() || load.panels().contains(panel.getKey()))
                .filter(panel ->
                        load.fixed().panel().map(panel.getKey()::equals).orElse(true))
                .mapToInt(Map.Entry::getValue)
                .filter(count -> count >= load.poles())
                .min()
                .orElse(phases);
    }

    /** A phase that takes a unit too many, or one too few, of what is left over. */
    private double byUnits(int count) {
        if (!isWhole || unit == 0) {
            return 0;
        }
        long over = units / unit % count;
        double parts = over == 0 ? 0 : Math.max(over, count - over) / (double) count;
        return parts * unit / UNITS_AN_AMP;
    }

    private static double proven(double amps) {
        return Math.max(0, amps - ROUNDING_AMPS);
    }

    private static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }
}
