package evenrise.solver.engine.search;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import evenrise.solver.engine.state.Setting;
import java.util.Arrays;
import java.util.List;
import org.optaplanner.core.api.score.director.ScoreDirector;
import org.optaplanner.core.config.heuristic.selector.entity.EntitySelectorConfig;
import org.optaplanner.core.config.heuristic.selector.entity.pillar.PillarSelectorConfig;
import org.optaplanner.core.config.heuristic.selector.move.MoveSelectorConfig;
import org.optaplanner.core.config.heuristic.selector.move.composite.UnionMoveSelectorConfig;
import org.optaplanner.core.config.heuristic.selector.move.generic.ChangeMoveSelectorConfig;
import org.optaplanner.core.config.heuristic.selector.move.generic.PillarChangeMoveSelectorConfig;
import org.optaplanner.core.config.heuristic.selector.move.generic.PillarSwapMoveSelectorConfig;
import org.optaplanner.core.config.heuristic.selector.move.generic.SubPillarType;
import org.optaplanner.core.config.heuristic.selector.move.generic.SwapMoveSelectorConfig;
import org.optaplanner.core.config.heuristic.selector.value.ValueSelectorConfig;
import org.optaplanner.core.impl.heuristic.move.Move;
import org.optaplanner.core.impl.heuristic.selector.common.decorator.SelectionFilter;
import org.optaplanner.core.impl.heuristic.selector.move.generic.ChangeMove;
import org.optaplanner.core.impl.heuristic.selector.move.generic.PillarChangeMove;
import org.optaplanner.core.impl.heuristic.selector.move.generic.PillarSwapMove;
import org.optaplanner.core.impl.heuristic.selector.move.generic.SwapMove;
import org.optaplanner.core.impl.score.director.incremental.IncrementalScoreDirector;

/**
 * The library's own moves: one variable changes, two entities swap, boards that are set alike change or swap together. A
 * filter leaves out what no plan can be: a breaker where it does not fit or where another sits, a setting that is not offered.
 */
final class StockMoves {
    private static final String PLACE = "place";
    private static final String OUTPUT = "output";
    private static final String START_DELAY = "startDelay";
    private static final String STEP = "step";

    private StockMoves() {}

    static UnionMoveSelectorConfig config() {
        return new UnionMoveSelectorConfig()
                .withMoveSelectors(
                        change(LoadPlacement.class, PLACE),
                        change(LoadPlacement.class, OUTPUT),
                        change(BoardSetup.class, START_DELAY),
                        change(BoardSetup.class, STEP),
                        swap(LoadPlacement.class, Places.class, PLACE),
                        swap(LoadPlacement.class, Outputs.class, OUTPUT),
                        swap(LoadPlacement.class, Both.class, PLACE, OUTPUT),
                        swap(BoardSetup.class, Allowed.class, START_DELAY, STEP),
                        pillarChange(START_DELAY),
                        pillarChange(STEP),
                        new PillarSwapMoveSelectorConfig()
                                .withPillarSelectorConfig(boards())
                                .withSubPillarType(SubPillarType.NONE)
                                .withVariableNameIncludes(START_DELAY, STEP)
                                .withFilterClass(Allowed.class));
    }

    private static MoveSelectorConfig<?> change(Class<?> entity, String variable) {
        return new ChangeMoveSelectorConfig()
                .withEntitySelectorConfig(new EntitySelectorConfig(entity))
                .withValueSelectorConfig(new ValueSelectorConfig(variable))
                .withFilterClass(Allowed.class);
    }

    private static MoveSelectorConfig<?> swap(Class<?> entity, Class<? extends Allowed> filter, String... variables) {
        return new SwapMoveSelectorConfig()
                .withEntitySelectorConfig(new EntitySelectorConfig(entity))
                .withVariableNameIncludes(variables)
                .withFilterClass(filter);
    }

    private static MoveSelectorConfig<?> pillarChange(String variable) {
        return new PillarChangeMoveSelectorConfig()
                .withPillarSelectorConfig(boards())
                .withSubPillarType(SubPillarType.NONE)
                .withValueSelectorConfig(new ValueSelectorConfig(variable))
                .withFilterClass(Allowed.class);
    }

    private static PillarSelectorConfig boards() {
        return new PillarSelectorConfig().withEntitySelectorConfig(new EntitySelectorConfig(BoardSetup.class));
    }

    /** Whether what a move leads to can be at all. */
    public static class Allowed implements SelectionFilter<WorkingPlan, Move<WorkingPlan>> {
        @Override
        public boolean accept(ScoreDirector<WorkingPlan> director, Move<WorkingPlan> move) {
            PlanSums sums = ((PlanScoreCalculator)
                            ((IncrementalScoreDirector<WorkingPlan, ?>) director).getIncrementalScoreCalculator())
                    .sums();
            CompiledProject compiled = director.getWorkingSolution().compiled();
            if (move instanceof ChangeMove<WorkingPlan> change) {
                return mayHave(
                        sums, compiled, change.getEntity(), change.getVariableName(), change.getToPlanningValue());
            }
            if (move instanceof PillarChangeMove<WorkingPlan> change) {
                return change.getPillar().stream()
                        .allMatch(it ->
                                mayHave(sums, compiled, it, change.getVariableName(), change.getToPlanningValue()));
            }
            if (move instanceof PillarSwapMove<WorkingPlan> swap) {
                return maySet(compiled, swap.getLeftPillar(), swap.getRightPillar())
                        && maySet(compiled, swap.getRightPillar(), swap.getLeftPillar());
            }
            SwapMove<WorkingPlan> swap = (SwapMove<WorkingPlan>) move;
            if (swap.getLeftEntity() instanceof LoadPlacement left
                    && swap.getRightEntity() instanceof LoadPlacement right) {
                return mayBe(compiled, left, right) && mayBe(compiled, right, left);
            }
            return maySet(compiled, List.of(swap.getLeftEntity()), List.of(swap.getRightEntity()))
                    && maySet(compiled, List.of(swap.getRightEntity()), List.of(swap.getLeftEntity()));
        }

        /** Whether a load can be where another is. */
        boolean mayBe(CompiledProject compiled, LoadPlacement load, LoadPlacement other) {
            throw new IllegalStateException("no filter of loads");
        }

        private static boolean mayHave(
                PlanSums sums, CompiledProject compiled, Object entity, String variable, Object value) {
            if (entity instanceof LoadPlacement load) {
                return value instanceof Place place
                        ? compiled.mayTake(load.load(), place)
                                && Arrays.stream(place.slots()).allMatch(slot -> isFree(sums.loadInSlot(slot), load))
                        : value instanceof Output output
                                && compiled.mayUse(load.load(), output)
                                && isFree(sums.loadOnOutput(output.index()), load);
            }
            int board = ((BoardSetup) entity).board();
            Setting[] offered = variable.equals(STEP) ? compiled.steps[board] : compiled.startDelays[board];
            return value instanceof Setting setting && isOffered(offered, setting);
        }

        private static boolean isFree(int sits, LoadPlacement load) {
            return sits == CompiledProject.NONE || sits == load.load();
        }

        private static boolean maySet(CompiledProject compiled, List<Object> boards, List<Object> others) {
            BoardSetup other = (BoardSetup) others.get(0);
            return boards.stream()
                    .mapToInt(board -> ((BoardSetup) board).board())
                    .allMatch(board -> isOffered(compiled.startDelays[board], other.getStartDelay())
                            && isOffered(compiled.steps[board], other.getStep()));
        }

        private static boolean isOffered(Setting[] offered, Setting setting) {
            return Arrays.asList(offered).contains(setting);
        }
    }

    /** Breakers that change places. */
    public static class Places extends Allowed {
        @Override
        boolean mayBe(CompiledProject compiled, LoadPlacement load, LoadPlacement other) {
            return other.getPlace() != null && compiled.mayTake(load.load(), other.getPlace());
        }
    }

    /** Loads that change outputs. */
    public static class Outputs extends Allowed {
        @Override
        boolean mayBe(CompiledProject compiled, LoadPlacement load, LoadPlacement other) {
            return other.getOutput() != null && compiled.mayUse(load.load(), other.getOutput());
        }
    }

    /** Loads that change both. */
    public static class Both extends Allowed {
        private final Places places = new Places();
        private final Outputs outputs = new Outputs();

        @Override
        boolean mayBe(CompiledProject compiled, LoadPlacement load, LoadPlacement other) {
            return places.mayBe(compiled, load, other) && outputs.mayBe(compiled, load, other);
        }
    }
}
