package evenrise.solver.engine.search;

import evenrise.solver.engine.state.Setting;
import org.optaplanner.core.api.domain.entity.PlanningEntity;
import org.optaplanner.core.api.domain.variable.PlanningVariable;

/** How one board is set. */
@PlanningEntity
public class BoardSetup {
    private int board;

    @PlanningVariable(valueRangeProviderRefs = "settings")
    private Setting startDelay;

    @PlanningVariable(valueRangeProviderRefs = "settings")
    private Setting step;

    BoardSetup() {}

    BoardSetup(int board, Setting startDelay, Setting step) {
        this.board = board;
        this.startDelay = startDelay;
        this.step = step;
    }

    int board() {
        return board;
    }

    Setting getStartDelay() {
        return startDelay;
    }

    void setStartDelay(Setting startDelay) {
        this.startDelay = startDelay;
    }

    Setting getStep() {
        return step;
    }

    void setStep(Setting step) {
        this.step = step;
    }
}
