package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.answer.HandRefused;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Referee;
import evenrise.solver.desk.DeskAnswers.DeskSheet;
import evenrise.solver.desk.DeskAnswers.LoadView;
import evenrise.solver.desk.DeskAnswers.PlanSheet;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Random;
import java.util.function.Function;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SheetDifferenceTest {
    @TempDir
    private Path folder;

    private Desk desk;
    private DeskWork work;

    @BeforeEach
    void open() {
        DeskFiles files = DeskFiles.of(Hall.in(folder));
        desk = new Desk(files, Optional.of(Hall.state()), List.of());
        work = new DeskWork(desk, files, Hall.JOBS);
    }

    private static <T> List<T> filled(List<T> before, List<T> changed, Function<T, String> id) {
        Map<String, T> byId = new HashMap<>();
        changed.forEach(each -> byId.put(id.apply(each), each));
        return before.stream()
                .map(each -> byId.getOrDefault(id.apply(each), each))
                .toList();
    }

    /** As a window does it. */
    private static PlanSheet filled(PlanSheet before, PlanSheet told) {
        return new PlanSheet(
                told.name(),
                told.metrics(),
                told.violations(),
                told.judged(),
                told.phases(),
                filled(before.panels(), told.panels(), DeskAnswers.PanelView::id),
                filled(before.boards(), told.boards(), DeskAnswers.BoardView::id),
                filled(before.loads(), told.loads(), LoadView::id),
                told.unplaced(),
                told.curves().isEmpty() ? before.curves() : told.curves());
    }

    @Test
    void filledIntoWhatWasShownIsWhatAWholeEvaluationShows() {
        Random chance = new Random(8);
        List<String> loads = List.of("dsp", "amp-1", "amp-2", "lamp");
        PlanSheet shown = desk.sheet().plan().orElseThrow();
        for (int move = 0; move < 40; move++) {
            long before = desk.revision();
            int slot = 1 + chance.nextInt(12);
            try {
                work.move(Hall.toSlot(loads.get(chance.nextInt(4)), chance.nextBoolean() ? "P1" : "P2", slot));
            } catch (HandRefused taken) {
                continue;
            }

            DeskSheet told = desk.since(before, desk.sheet());
            shown = filled(shown, told.plan().orElseThrow());

            assertThat(told.since()).isEqualTo(OptionalLong.of(before));
            Layout anew = Layout.of(
                    desk.state().orElseThrow().project(),
                    desk.state().orElseThrow().plan());
            assertThat(shown).isEqualTo(new ShownPlan(anew, Referee.judge(anew)).sheet(Optional.empty()));
        }
    }

    @Test
    void namesOnlyTheLoadsThatAreOtherwise() {
        long before = desk.revision();
        desk.sheet();
        work.move(Hall.toSlot("amp-1", "P2", 3));

        DeskSheet told = desk.since(before, desk.sheet());

        assertThat(told.plan().orElseThrow().loads()).extracting(LoadView::id).containsExactly("amp-1");
        assertThat(told.plan().orElseThrow().panels())
                .extracting(DeskAnswers.PanelView::id)
                .containsExactly("P2");
    }

    @Test
    void isTheWholeWhereAListHasOtherEntries() {
        long before = desk.revision();
        desk.sheet();
        work.edit(new DeskRequests.Cells("loads", List.of("lamp"), List.of()));

        DeskSheet told = desk.since(before, desk.sheet());

        assertThat(told.since()).isEmpty();
        assertThat(told.plan().orElseThrow().loads()).hasSize(4);
    }

    @Test
    void isTheWholeWhereWhatWasShownIsNotKnown() {
        assertThat(desk.since(99, desk.sheet()).since()).isEmpty();
        assertThat(desk.since(0, desk.sheet()).since()).isEmpty();
    }
}
