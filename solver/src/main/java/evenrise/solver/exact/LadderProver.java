package evenrise.solver.exact;

import evenrise.model.project.Project;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.PhaseShares;
import evenrise.solver.exact.LadderPanels.Balance;
import java.util.Comparator;
import java.util.List;
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

    /** Loads times panels up to which panels are told apart; with more it takes many seconds. */
    private static final int MOST_SEATS = 1_000;

    /** Enough for guidance. */
    private static final int FEW_PARTS = 60;

    private final LadderLoads loads;
    private final List<Balance> balances;
    private final double peakWeight;
    private final double leastPeakAmps;

    private record Part(LadderBox box, double bound, int number) {}

    /** Whether anything comes of it for such a project. */
    static boolean suits(Project project) {
        return project.loads().size() <= MOST_LOADS
                && project.objective().peakInrush() > 0
                && project.supply().system().phases().size() > 1;
    }

    /** Whether each panel is balanced by itself; only then it says who had best sit where. */
    static boolean tellsPanelsApart(Project project) {
        return suits(project) && project.loads().size() * project.panels().size() <= MOST_SEATS;
    }

    /** @param leastPeakAmps what the peak is known not to stay below */
    LadderProver(Project project, double leastPeakAmps) {
        this(project, leastPeakAmps, tellsPanelsApart(project));
    }

    /**
     * @param tellsPanelsApart whether each panel is balanced by itself, which takes longer the more there are
     */
    LadderProver(Project project, double leastPeakAmps, boolean tellsPanelsApart) {
        this.leastPeakAmps = leastPeakAmps;
        LadderPanels panels = new LadderPanels(project, tellsPanelsApart);
        loads = new LadderLoads(project, panels, ProvenBounds.tellsRolesApart(project));
        balances = panels.balances;
        peakWeight = project.objective().peakInrush();
    }

    /**
     * What peak and deviations, by their weights in the objective, stay below in no plan that keeps every rule, in
     * ampere-equivalents; 0 where nothing is proven.
     */
    double amps(BooleanSupplier stop) {
        if (loads.climbers == 0) {
            return 0;
        }
        try (LadderProgram program = new LadderProgram(loads, balances, peakWeight, leastPeakAmps)) {
            return least(program, MOST_PARTS, stop).map(Part::bound).orElse(0.0);
        } catch (Unfit e) {
            return 0;
        }
    }

    /** Who sits where in the part with the least bound: no plan, since loads are cut in pieces there, but few of them are. */
    PhaseShares shares() {
        if (loads.climbers == 0) {
            return PhaseShares.NONE;
        }
        try (LadderProgram program = new LadderProgram(loads, balances, peakWeight, leastPeakAmps)) {
            return least(program, FEW_PARTS, () -> false)
                    .map(part -> program.shares(part.box()))
                    .orElse(PhaseShares.NONE);
        } catch (Unfit e) {
            return PhaseShares.NONE;
        }
    }

    private Optional<Part> least(LadderProgram program, int mostParts, BooleanSupplier stop) {
        PriorityQueue<Part> parts =
                new PriorityQueue<>(Comparator.comparingDouble(Part::bound).thenComparingInt(Part::number));
        parts.add(new Part(LadderBox.whole(loads.phases, loads.climbers), peakWeight * leastPeakAmps, 0));
        for (int number = 1; number < mostParts && !parts.isEmpty(); number += 2) {
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
        return Optional.ofNullable(parts.peek());
    }

    private void add(
            PriorityQueue<Part> parts, Part whole, Optional<LadderBox> box, int number, LadderProgram program) {
        box.ifPresent(half -> {
            double bound = program.multipliers(half).bound(loads, balances, half, peakWeight, leastPeakAmps);
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
