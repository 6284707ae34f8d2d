package evenrise.solver.bench;

import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.engine.search.PlainMove;
import evenrise.solver.engine.search.PlainMoves;
import evenrise.solver.engine.start.FirstPlan;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanMapper;
import evenrise.solver.engine.state.PlanSnapshot;
import evenrise.solver.engine.state.PlanSums;
import java.util.List;
import java.util.Random;
import java.util.concurrent.atomic.AtomicLong;
import org.jamesframework.core.problems.Problem;
import org.jamesframework.core.problems.constraints.validations.SimpleValidation;
import org.jamesframework.core.problems.constraints.validations.Validation;
import org.jamesframework.core.problems.objectives.evaluations.Evaluation;
import org.jamesframework.core.problems.objectives.evaluations.SimpleEvaluation;
import org.jamesframework.core.problems.sol.Solution;
import org.jamesframework.core.search.algo.ParallelTempering;
import org.jamesframework.core.search.neigh.Move;
import org.jamesframework.core.search.neigh.Neighbourhood;

/**
 * A peer for the benchmark: parallel tempering of a general library for local search, on the objective and what is charged
 * for broken rules. Moves are those of plain annealing and exchanges across panels; sums and first plan are the engine's.
 */
final class Tempering {
    private static final int REPLICAS = 10;
    private static final double COLD_SHARE = 1e-5;
    private static final double HOT_SHARE = 1e-3;

    private final CompiledProject compiled;
    private final ParallelTempering<Laid> search;
    private final AtomicLong moves = new AtomicLong();

    Tempering(Project project, long seed) {
        compiled = new CompiledProject(project);
        Laid first = new Laid(FirstPlan.build(compiled).snapshot());
        double objective = first.sums().objectiveMilliAmps();
        search = new ParallelTempering<>(
                new Layouts(), new Draws(), REPLICAS, COLD_SHARE * objective, HOT_SHARE * objective);
        search.setRandom(new Random(seed));
        search.setCurrentSolution(first);
    }

    /** The best plan once it was stopped. */
    Plan run() {
        search.start();
        Plan best = new PlanMapper(compiled).toPlan(search.getBestSolution().snapshot());
        search.dispose();
        return best;
    }

    void stop() {
        search.stop();
    }

    long moves() {
        return moves.get();
    }

    /** A plan as the library knows it. Sums are made when somebody asks for them: of most copies nobody does. */
    private final class Laid extends Solution {
        private PlanSnapshot plan;
        private PlanSums sums;

        Laid(PlanSnapshot plan) {
            this.plan = plan;
        }

        PlanSums sums() {
            if (sums == null) {
                sums = PlanSums.of(compiled, plan);
                plan = null;
            }
            return sums;
        }

        PlanSnapshot snapshot() {
            return sums == null ? plan : sums.snapshot();
        }

        @Override
        public Solution copy() {
            return new Laid(snapshot());
        }

        @Override
        public boolean equals(Object other) {
            return this == other;
        }

        @Override
        public int hashCode() {
            return System.identityHashCode(this);
        }
    }

    private record Step(PlainMove move) implements Move<Laid> {
        @Override
        public void apply(Laid laid) {
            move.make().accept(laid.sums());
            laid.sums().settle();
        }

        @Override
        public void undo(Laid laid) {
            move.undo().accept(laid.sums());
            laid.sums().settle();
        }
    }

    private final class Draws implements Neighbourhood<Laid> {
        private final PlainMoves draws = new PlainMoves(compiled, true);

        @Override
        public Move<Laid> getRandomMove(Laid laid, Random random) {
            moves.incrementAndGet();
            return new Step(draws.draw(laid.sums(), random));
        }

        @Override
        public List<Move<Laid>> getAllMoves(Laid laid) {
            throw new UnsupportedOperationException("moves are only ever drawn at random");
        }
    }

    private final class Layouts implements Problem<Laid> {
        @Override
        public Evaluation evaluate(Laid laid) {
            PlanSums sums = laid.sums();
            return SimpleEvaluation.WITH_VALUE(sums.objectiveMilliAmps() + (double) sums.hardCharge());
        }

        @Override
        public Validation validate(Laid laid) {
            return SimpleValidation.PASSED;
        }

        @Override
        public boolean isMinimizing() {
            return true;
        }

        @Override
        public Laid createRandomSolution(Random random) {
            throw new UnsupportedOperationException("it begins at the first plan");
        }
    }
}
