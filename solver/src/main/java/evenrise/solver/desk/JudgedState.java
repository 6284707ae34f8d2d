package evenrise.solver.desk;

import evenrise.model.rules.Layout;
import evenrise.model.rules.ProjectIndex;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;

/** What lies on the desk, laid out and judged by the hard rules once. */
record JudgedState(DeskState state, Layout layout, Verdict verdict) {
    static JudgedState of(DeskState state) {
        return of(state, new ProjectIndex(state.project()));
    }

    /** With the index of the state before, where that has the same project. */
    JudgedState next(DeskState state) {
        return state.project() == this.state.project() ? of(state, layout.index()) : of(state);
    }

    private static JudgedState of(DeskState state, ProjectIndex index) {
        Layout layout = Layout.of(index, state.plan());
        return new JudgedState(state, layout, Referee.judge(layout));
    }
}
