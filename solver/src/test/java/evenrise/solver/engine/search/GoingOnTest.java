package evenrise.solver.engine.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.ARandomProject;
import evenrise.solver.engine.state.CompiledProject;
import org.junit.jupiter.api.Test;

/** A search that goes on from a plan that was searched for begins gently, and hot only with the second half. */
class GoingOnTest {
    private final CompiledProject compiled = new CompiledProject(ARandomProject.of(3));

    @Test
    void isGentleForHalfOfTheBudgetAtMost() {
        Cycle cycle = new Cycle(compiled, true);

        cycle.budgetUsed(0.499);
        assertThat(cycle.isGentle()).isTrue();
        cycle.budgetUsed(0.5);
        assertThat(cycle.isGentle()).isFalse();
        assertThat(cycle.progress()).isZero();
    }

    @Test
    void isNeverGentleOtherwise() {
        assertThat(new Cycle(compiled, false).isGentle()).isFalse();
    }

    @Test
    void looksNearThePeakFromTheBeginning() {
        Cycle cycle = new Cycle(compiled, true);

        assertThat(cycle.stage()).isEqualTo(0.6);
        cycle.budgetUsed(0.25);
        assertThat(cycle.stage()).isEqualTo(0.8);
    }

    @Test
    void beginsAtAFifthOfTheHeatAndEndsAsColdAsOthers() {
        Cooling cooling = new Cooling(compiled);

        assertThat(cooling.gentle(0) / cooling.temperature(0)).isCloseTo(0.2, within(1e-12));
        assertThat(cooling.gentle(1) / cooling.temperature(1)).isCloseTo(1, within(1e-9));
    }
}
