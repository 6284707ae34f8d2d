package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.answer.HandMove;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

/** Two changes of the hall made at the same time, one at the desk and one in the files. */
class StateMergeTest {
    private final DeskState base = Hall.state();

    private DeskState with(String load, UnaryOperator<Load> change) {
        Project project = base.project();
        return base.under(
                project.withLoads(project.loads().stream()
                        .map(each -> each.id().equals(load) ? change.apply(each) : each)
                        .toList()),
                base.notes());
    }

    private DeskState moved(DeskState state, String load, int slot) {
        Layout layout = Layout.of(state.project(), state.plan());
        return state.withPlan(new HandMove(layout, load).toSlot("P2", slot));
    }

    private static Load load(DeskState state, String id) {
        return state.project().loads().stream()
                .filter(each -> each.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static int slot(Plan plan, String load) {
        return plan.assignments().stream()
                .filter(each -> each.load().equals(load))
                .mapToInt(Assignment::slot)
                .findFirst()
                .orElseThrow();
    }

    private static DeskState state(StateMerge.Merged merged) {
        return merged.state().orElseThrow();
    }

    @Test
    void differentFieldsOfOneLoadAreBothTaken() {
        StateMerge.Merged merged = StateMerge.of(
                base, with("lamp", load -> load.withRunningAmps(3)), with("lamp", load -> load.withBreakerAmps(20)));

        assertThat(load(state(merged), "lamp").runningAmps()).isEqualTo(3);
        assertThat(load(state(merged), "lamp").breakerAmps()).isEqualTo(20);
        assertThat(merged.contradictions()).isEmpty();
    }

    @Test
    void ofOneFieldSaidTwiceTheFileCountsAndItIsTold() {
        StateMerge.Merged merged = StateMerge.of(
                base, with("lamp", load -> load.withRunningAmps(3)), with("lamp", load -> load.withRunningAmps(4)));

        assertThat(load(state(merged), "lamp").runningAmps()).isEqualTo(4);
        assertThat(merged.contradictions()).containsExactly("loads/lamp/running_a");
    }

    @Test
    void movesOfDifferentLoadsAreBothTaken() {
        StateMerge.Merged merged = StateMerge.of(base, moved(base, "amp-1", 7), moved(base, "amp-2", 9));

        assertThat(slot(state(merged).plan(), "amp-1")).isEqualTo(7);
        assertThat(slot(state(merged).plan(), "amp-2")).isEqualTo(9);
        assertThat(merged.contradictions()).isEmpty();
    }

    @Test
    void ofOneLoadMovedTwiceTheFileCountsAndItIsTold() {
        StateMerge.Merged merged = StateMerge.of(base, moved(base, "amp-1", 7), moved(base, "amp-1", 9));

        assertThat(slot(state(merged).plan(), "amp-1")).isEqualTo(9);
        assertThat(merged.contradictions()).containsExactly("place of amp-1");
    }

    @Test
    void whatOneSideTookOutIsGoneWhereTheOtherLeftIt() {
        DeskState without = base.under(
                base.project()
                        .withLoads(base.project().loads().stream()
                                .filter(each -> !each.id().equals("lamp"))
                                .toList()),
                base.notes());

        StateMerge.Merged merged = StateMerge.of(base, without, with("dsp", load -> load.withRunningAmps(4)));

        assertThat(state(merged).project().loads()).extracting(Load::id).doesNotContain("lamp");
        assertThat(load(state(merged), "dsp").runningAmps()).isEqualTo(4);
    }

    @Test
    void whatOneSideTookOutAndTheOtherChangedStaysAndIsTold() {
        DeskState without = base.under(
                base.project()
                        .withLoads(base.project().loads().stream()
                                .filter(each -> !each.id().equals("lamp"))
                                .toList()),
                base.notes());

        StateMerge.Merged merged = StateMerge.of(base, without, with("lamp", load -> load.withRunningAmps(4)));

        assertThat(load(state(merged), "lamp").runningAmps()).isEqualTo(4);
        assertThat(merged.contradictions()).containsExactly("loads/lamp");
    }

    @Test
    void whatMakesNoSenseTogetherIsNotMerged() {
        // One side takes panel P2 and what is in it out, the other puts a board there.
        Project project = base.project();
        DeskState without = base.under(
                project.with()
                        .panels(List.of(project.panels().get(0)))
                        .boards(List.of(project.boards().get(0)))
                        .build(),
                base.notes());
        DeskState more = base.under(
                project.with()
                        .boards(List.of(
                                project.boards().get(0),
                                project.boards().get(1),
                                project.boards().get(1).with().id("B3").build()))
                        .build(),
                base.notes());

        assertThat(StateMerge.of(base, without, more).state()).isEmpty();
    }
}
