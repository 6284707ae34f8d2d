package evenrise.solver.engine.nearby;

import evenrise.solver.engine.move.BoardRetime;
import evenrise.solver.engine.move.DraftMove;
import evenrise.solver.engine.move.Insertion;
import evenrise.solver.engine.move.Neighbourhood;
import evenrise.solver.engine.move.Targets;
import evenrise.solver.engine.move.Wheel;
import evenrise.solver.engine.state.PlanSums;
import java.util.List;
import java.util.SplittableRandom;

/** Draws changes near a plan as built: the usual neighbourhoods, the least changes, and ways back. */
final class NearbyDraws {
    private static final int MOST_DRAWS = 50;
    private static final int RETURN_SHARE = 4;
    private static final int WITH_SETTING = 5;

    private final PlanSums sums;
    private final SplittableRandom random;
    private final Targets targets;
    private final List<Neighbourhood> wheel;
    private final Neighbourhood insertion;
    private final Neighbourhood returnToBuilt;
    private final Neighbourhood smallestChange = new SmallestChange();
    private final Neighbourhood retime = new BoardRetime();

    NearbyDraws(PlanSums sums, BuiltPositions positions, SplittableRandom random) {
        this.sums = sums;
        this.random = random;
        this.targets = new Targets(sums);
        this.wheel = Wheel.of(sums);
        this.insertion = new Insertion(sums);
        this.returnToBuilt = new ReturnToBuilt(positions);
    }

    /**
     * Draws one; leaves the draft empty where none was found.
     *
     * @param isDear whether the least changes are mostly drawn
     */
    void draw(boolean isDear, DraftMove draft) {
        for (int i = 0; i < MOST_DRAWS; i++) {
            draft.clear();
            if (choose(isDear).draw(sums, targets, random, draft) && !draft.isEmpty()) {
                if (sums.compiled.isSmall() && random.nextInt(WITH_SETTING) == 0) {
                    retime.draw(sums, targets, random, draft);
                }
                return;
            }
        }
        draft.clear();
    }

    private Neighbourhood choose(boolean isDear) {
        if (sums.unassigned() > 0 && random.nextBoolean()) {
            return insertion;
        }
        if (isDear && random.nextInt(4) != 0) {
            return random.nextInt(RETURN_SHARE) == 0 ? returnToBuilt : smallestChange;
        }
        return random.nextInt(RETURN_SHARE) == 0 ? returnToBuilt : wheel.get(random.nextInt(wheel.size()));
    }
}
