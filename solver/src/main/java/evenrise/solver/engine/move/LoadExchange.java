package evenrise.solver.engine.move;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import java.util.SplittableRandom;

/** Two loads change both their outputs and their panels, whatever the poles; each takes a spot that is or becomes free. */
final class LoadExchange implements Neighbourhood {
    private static final int TRIES = 8;
    /** One draw in so many takes any two loads; else they are of one group, or both without one. */
    private static final int BOLD = 4;

    private final SpotFinder free;

    LoadExchange(PlanSums sums) {
        free = new SpotFinder(sums);
    }

    @Override
    public boolean draw(PlanSums sums, Targets targets, SplittableRandom random, DraftMove draft) {
        CompiledProject compiled = sums.compiled;
        int one = targets.load(random);
        boolean bold = random.nextInt(BOLD) == 0;
        int other = one;
        for (int i = 0; i < TRIES && !suits(sums, one, other, bold); i++) {
            other = random.nextInt(compiled.loadCount());
        }
        if (!suits(sums, one, other, bold)) {
            return false;
        }
        Place from = sums.placeOf(one);
        Place to = sums.placeOf(other);
        draft.wireAs(one, other);
        draft.wireAs(other, one);
        if (from.panel() != to.panel()) {
            if (compiled.bundle[one].length > 1 || compiled.bundle[other].length > 1) {
                return false;
            }
            free.clear();
            free.leave(from);
            free.leave(to);
            boolean oneFirst = compiled.poles[one] >= compiled.poles[other];
            int larger = oneFirst ? one : other;
            int smaller = oneFirst ? other : one;
            Place largerTo = free.take(larger, oneFirst ? to.panel() : from.panel(), random);
            Place smallerTo = free.take(smaller, oneFirst ? from.panel() : to.panel(), random);
            if (largerTo == null || smallerTo == null) {
                return false;
            }
            draft.place(larger, largerTo);
            draft.place(smaller, smallerTo);
        }
        return draft.keepsRanges();
    }

    private static boolean suits(PlanSums sums, int one, int other, boolean bold) {
        CompiledProject compiled = sums.compiled;
        boolean both = sums.placeOf(one) != null
                && sums.placeOf(other) != null
                && (sums.outputOf(one) == null) == (sums.outputOf(other) == null);
        return one != other && both && (bold || compiled.group[one] == compiled.group[other]);
    }
}
