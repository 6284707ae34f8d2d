package evenrise.solver.exact;

import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Project;
import evenrise.solver.bounds.ProvenBounds;
import java.util.Comparator;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.function.BooleanSupplier;

/**
 * What peak and deviations must cost together, by who shares a phase with whom. A phase on which something of great excess
 * comes on must carry little before, and the others more; then it carries little in use, too, unless what comes on there has
 * small excesses, which keeps the great ones off it. All ways are split by the greatest excess on each phase; in each part the
 * ladder is a linear program, whose multipliers prove a bound. The part with the least is split until it is a single rank for
 * each phase, or the effort is used.
 */
final class LadderProver {
    /** Of larger projects it proves no more than arguments on the mean of the phases do, and takes long. */
    static final int MOST_LOADS = 400;

    private static final int MOST_PARTS = 400;

    private final LadderLoads loads;
    private final double peakWeight;
    private final double deviationWeight;
    private final double leastPeakAmps;

    private record Part(LadderBox box, double bound, int number) {}

    /** Whether anything comes of it for such a project. */
    static boolean suits(Project project) {
        return project.loads().size() <= MOST_LOADS
                && project.objective().peakInrush() > 0
                && project.supply().system().phases().size() > 1;
    }

    /** @param leastPeakAmps what the peak is known not to stay below */
    LadderProver(Project project, double leastPeakAmps) {
        this.leastPeakAmps = leastPeakAmps;
        loads = new LadderLoads(project, ProvenBounds.tellsRolesApart(project));
        ObjectiveWeights weights = project.objective();
        peakWeight = weights.peakInrush();
        deviationWeight =
                weights.supplyImbalance() + (ProvenBounds.panelsDeviateAsMuch(project) ? weights.panelImbalance() : 0);
    }

    /**
     * What peak and deviations, by their weights in the objective, stay below in no plan that keeps every rule, in
     * ampere-equivalents; 0 where nothing is proven.
     */
    double amps(BooleanSupplier stop) {
        if (loads.climbers == 0) {
            return 0;
        }
        try (LadderProgram program = new LadderProgram(loads, peakWeight, deviationWeight, leastPeakAmps)) {
            return amps(program, stop);
        } catch (Unfit e) {
            return 0;
        }
    }

    private double amps(LadderProgram program, BooleanSupplier stop) {
        PriorityQueue<Part> parts =
                new PriorityQueue<>(Comparator.comparingDouble(Part::bound).thenComparingInt(Part::number));
        parts.add(new Part(LadderBox.whole(loads.phases, loads.climbers), peakWeight * leastPeakAmps, 0));
        for (int number = 1; number < MOST_PARTS && !parts.isEmpty(); number += 2) {
            Part least = parts.peek();
            int phase = least.box().widest(loads.excessAmps);
            if (phase < 0 || stop.getAsBoolean()) {
                break;
            }
            parts.remove();
            int middle = middle(least.box().from(phase), least.box().to(phase));
            add(parts, least, least.box().with(phase, 0, middle), number, program);
            add(parts, least, least.box().with(phase, middle + 1, loads.climbers), number + 1, program);
        }
        return parts.isEmpty() ? 0 : parts.peek().bound();
    }

    private void add(
            PriorityQueue<Part> parts, Part whole, Optional<LadderBox> box, int number, LadderProgram program) {
        box.ifPresent(half -> {
            double bound = program.multipliers(half).bound(loads, half, peakWeight, deviationWeight, leastPeakAmps);
            if (bound < Double.POSITIVE_INFINITY) {
                parts.add(new Part(half, Math.max(whole.bound(), bound), number));
            }
        });
    }

    /** The last rank that belongs to the first half, by excess. */
    private int middle(int from, int to) {
        double middle = (loads.excessAmps[from] + loads.excessAmps[to]) / 2;
        int rank = from;
        while (rank < to - 1 && loads.excessAmps[rank + 1] >= middle) {
            rank++;
        }
        return rank;
    }
}
