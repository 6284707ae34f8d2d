package evenrise.solver.engine;

import java.util.Iterator;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import org.optaplanner.core.api.score.director.ScoreDirector;
import org.optaplanner.core.impl.heuristic.selector.move.factory.MoveIteratorFactory;
import org.optaplanner.core.impl.score.director.incremental.IncrementalScoreDirector;

/** Draws moves without end, from the neighbourhoods by their weights. */
public final class Moves implements MoveIteratorFactory<WorkingPlan, Rearrangement> {
    private static final int MOST_DRAWS = 200;

    private SplittableRandom random;
    private PlanScoreCalculator calculator;
    private Situation situation;
    private Aim aim;
    private Sketch sketch;
    private List<Neighbourhood> wheel;

    @Override
    public long getSize(ScoreDirector<WorkingPlan> scoreDirector) {
        return scoreDirector.getWorkingSolution().plant().loadCount();
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
        Situation current = calculator.situation();
        if (current != situation) {
            situation = current;
            aim = new Aim(situation);
            sketch = new Sketch(situation);
            wheel = wheel(situation);
        }
        for (int i = 0; i < MOST_DRAWS; i++) {
            sketch.clear();
            Neighbourhood neighbourhood = wheel.get(random.nextInt(wheel.size()));
            if (neighbourhood.draw(situation, aim, random, sketch) && !sketch.isEmpty()) {
                return sketch.toMove(plan);
            }
        }
        return new Rearrangement();
    }

    private static List<Neighbourhood> wheel(Situation situation) {
        Neighbourhood places = new PlaceExchange();
        Neighbourhood outputs = new OutputExchange();
        Neighbourhood runs = new RunReorder();
        Neighbourhood gaps = new GapShift();
        Neighbourhood boards = new BoardRetime();
        Neighbourhood groups = new GroupTransfer(situation);
        Neighbourhood missing = new Insertion(situation);
        return List.of(
                places, places, places, places, places, outputs, outputs, outputs, outputs, runs, runs, gaps, gaps,
                gaps, boards, boards, boards, groups, groups, missing);
    }
}
