package evenrise.solver.engine.search;

import evenrise.solver.engine.move.BoardRetime;
import evenrise.solver.engine.move.DraftMove;
import evenrise.solver.engine.move.Eviction;
import evenrise.solver.engine.move.GroupTransfer;
import evenrise.solver.engine.move.Insertion;
import evenrise.solver.engine.move.Neighbourhood;
import evenrise.solver.engine.move.Targets;
import evenrise.solver.engine.move.Wheel;
import evenrise.solver.engine.state.PlanSnapshot;
import evenrise.solver.engine.state.PlanSums;
import java.util.Iterator;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import org.optaplanner.core.api.score.director.ScoreDirector;
import org.optaplanner.core.impl.heuristic.selector.move.factory.MoveIteratorFactory;
import org.optaplanner.core.impl.score.director.InnerScoreDirector;
import org.optaplanner.core.impl.score.director.incremental.IncrementalScoreDirector;

/** Draws moves without end, from the neighbourhoods by their weights. */
public final class MoveStream implements MoveIteratorFactory<WorkingPlan, Rearrangement> {
    private static final int MOST_DRAWS = 200;
    /** One in so many changes of a small project comes together with a new setting of a board. */
    private static final int WITH_SETTING = 5;

    private static final double INSERTIONS = 0.05;
    private static final double INSERTIONS_A_PART = 20;
    private static final int EVICTIONS_BROKEN = 10;
    private static final int EVICTIONS_KEPT = 50;
    /** Of draws of plants while a rule is broken: what is too much for a panel with all that feeds it must go to another. */
    private static final int TRANSFERS_BROKEN = 5;

    private final Neighbourhood retime = new BoardRetime();
    private final Neighbourhood eviction = new Eviction();
    private Neighbourhood insertion;
    private Neighbourhood transfer;

    private SplittableRandom random;
    private PlanScoreCalculator calculator;
    private PlanSums sums;
    private Targets targets;
    private DraftMove draft;
    private List<Neighbourhood> wheel;
    private FineTuning fine;

    @Override
    public long getSize(ScoreDirector<WorkingPlan> scoreDirector) {
        return scoreDirector.getWorkingSolution().compiled().loadCount();
    }

    @Override
    public Iterator<Rearrangement> createOriginalMoveIterator(ScoreDirector<WorkingPlan> scoreDirector) {
        throw new UnsupportedOperationException("moves are only ever drawn at random");
    }

    @Override
    public Iterator<Rearrangement> createRandomMoveIterator(ScoreDirector<WorkingPlan> director, Random seed) {
        if (random == null) {
            random = new SplittableRandom(seed.nextLong());
            calculator = (PlanScoreCalculator)
                    ((IncrementalScoreDirector<WorkingPlan, ?>) director).getIncrementalScoreCalculator();
            fine = new FineTuning(calculator, (InnerScoreDirector<WorkingPlan, ?>) director, random);
        }
        WorkingPlan plan = director.getWorkingSolution();
        return new Iterator<>() {
            @Override
            public boolean hasNext() {
                return true;
            }

            @Override
            public Rearrangement next() {
                return draw(plan);
            }
        };
    }

    private Rearrangement draw(WorkingPlan plan) {
        PlanSums current = calculator.sums();
        if (current != sums) {
            sums = current;
            targets = new Targets(sums);
            draft = new DraftMove(sums);
            wheel = Wheel.of(sums);
            insertion = new Insertion(sums);
            transfer = new GroupTransfer(sums);
        }
        PlanSnapshot asked = calculator.takeAsked();
        if (asked != null) {
            return Rearrangement.to(asked, plan);
        }
        if (fine.isDue()) {
            return fine.run(plan);
        }
        for (int i = 0; i < MOST_DRAWS; i++) {
            draft.clear();
            Neighbourhood neighbourhood = choose();
            if (neighbourhood.draw(sums, targets, random, draft) && !draft.isEmpty()) {
                if (sums.compiled.isSmall() && random.nextInt(WITH_SETTING) == 0) {
                    // Where this leads nowhere, the first change stands alone.
                    retime.draw(sums, targets, random, draft);
                }
                return neighbourhood.unsettles() && fine.isOn()
                        ? fine.settle(draft, plan)
                        : Rearrangement.of(draft, plan);
            }
        }
        return new Rearrangement(0);
    }

    /**
     * While loads are without room, up to half of the draws put one in, fewer where they are few among many; turning others
     * out is rare while no rule is broken.
     */
    private Neighbourhood choose() {
        if (sums.unassigned() > 0) {
            double share = INSERTIONS + INSERTIONS_A_PART * sums.unassigned() / sums.compiled.loadCount();
            if (random.nextDouble() < Math.min(0.5, share)) {
                return insertion;
            }
        }
        boolean broken = sums.hardCharge() > 0;
        if ((broken || sums.compiled.isSmall()) && random.nextInt(broken ? EVICTIONS_BROKEN : EVICTIONS_KEPT) == 0) {
            return eviction;
        }
        if (broken && sums.compiled.hasFurtherParts && random.nextInt(TRANSFERS_BROKEN) == 0) {
            return transfer;
        }
        return wheel.get(random.nextInt(wheel.size()));
    }
}
