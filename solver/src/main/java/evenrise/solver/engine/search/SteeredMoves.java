package evenrise.solver.engine.search;

import evenrise.solver.engine.move.DraftMove;
import evenrise.solver.engine.state.PlanSums;
import java.util.Iterator;
import java.util.Random;
import org.optaplanner.core.api.score.director.ScoreDirector;
import org.optaplanner.core.impl.heuristic.selector.move.factory.MoveIteratorFactory;

/** Passes on what a {@link Steering} draws. */
final class SteeredMoves implements MoveIteratorFactory<WorkingPlan, Rearrangement> {
    private final Steering steering;
    private final SteeredAcceptor acceptor;
    private final Runnable whenDone;
    private PlanSums sums;
    private DraftMove draft;

    /** @param whenDone called when nothing is left to try */
    SteeredMoves(Steering steering, SteeredAcceptor acceptor, Runnable whenDone) {
        this.steering = steering;
        this.acceptor = acceptor;
        this.whenDone = whenDone;
    }

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
        PlanSums current = acceptor.calculator().sums();
        if (current != sums) {
            sums = current;
            draft = new DraftMove(sums);
        }
        draft.clear();
        steering.draw(draft, acceptor.used());
        if (steering.isDone()) {
            whenDone.run();
        }
        return Rearrangement.of(draft, plan);
    }
}
