package evenrise.solver.engine.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Overlap;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.sample.PlantOption;
import evenrise.solver.sample.Sample;
import evenrise.solver.sample.VenuePlant;
import evenrise.solver.sample.VenueSize;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** An annealing begins no hotter than the moves of its budget can cool. */
class HeatByBudgetTest {
    private static final VenueSize SIZE = new VenueSize(3, 60, PhaseSystem.THREE_PHASE);

    private final CompiledProject plain =
            new CompiledProject(Sample.venue(1, SIZE).project());
    private final double square = (double) plain.loadCount() * plain.loadCount();

    @Test
    void tenMovesForTheSquareOfEachLoadCoolAllHeat() {
        Cooling cooling = new Cooling(plain);

        assertThat(cooling.part(10 * square)).isEqualTo(1);
        assertThat(cooling.part(100 * square)).isEqualTo(1);
    }

    @Test
    void fewerMovesCoolAPartInProportionAndNeverLessThanATenth() {
        Cooling cooling = new Cooling(plain);

        assertThat(cooling.part(5 * square)).isCloseTo(0.5, within(1e-12));
        assertThat(cooling.part(square)).isCloseTo(0.1, within(1e-12));
        assertThat(cooling.part(0)).isEqualTo(0.1);
    }

    @Test
    void projectsThatAreSmallOrNotPlainKeepAllHeat() {
        CompiledProject small =
                new CompiledProject(Sample.venue(1, VenueSize.ofPanels(1)).project());

        CompiledProject halls = new CompiledProject(notPlain());

        assertThat(small.isSmall()).isTrue();
        assertThat(halls.isPlain()).isFalse();
        assertThat(new Cooling(small).part(0)).isEqualTo(1);
        assertThat(new Cooling(halls).part(0)).isEqualTo(1);
    }

    @Test
    void theMovesOfTheBudgetAreReckonedByWhatItHasAllowedSoFar() {
        Cycle cycle = new Cycle(plain, false);
        cycle.budgetUsed(0.02);
        assertThat(cycle.budgetMoves()).isZero();

        cycle.work(300);
        cycle.budgetUsed(0.05);

        assertThat(cycle.budgetMoves()).isCloseTo(10_000, within(1e-6));
    }

    /** The first annealing reckons anew all along; what others begin at stays. */
    @Test
    void anAnnealingKeepsTheHeatThatItBeganWith() {
        Cycle cycle = new Cycle(plain, false);
        cycle.budgetUsed(0);
        cycle.work(1_500);
        assertThat(cycle.budgetUsed(0.15)).isTrue();
        assertThat(cycle.budgetMoves()).isCloseTo(10_000, within(1e-6));

        cycle.work(10);
        cycle.budgetUsed(0.3);

        assertThat(cycle.isFirst()).isFalse();
        assertThat(cycle.budgetMoves()).isCloseTo(10_000, within(1e-6));
    }

    private static Project notPlain() {
        VenuePlant nodes = new VenuePlant(Set.of(PlantOption.NODES), Overlap.ONE_AT_A_TIME);
        return Sample.venue(1, SIZE, "halls", nodes).project();
    }
}
