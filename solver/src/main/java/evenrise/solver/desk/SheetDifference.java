package evenrise.solver.desk;

import evenrise.solver.desk.DeskAnswers.BoardView;
import evenrise.solver.desk.DeskAnswers.DeskSheet;
import evenrise.solver.desk.DeskAnswers.LoadView;
import evenrise.solver.desk.DeskAnswers.PanelView;
import evenrise.solver.desk.DeskAnswers.PlanSheet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;

/** What a window needs to be told that shows an earlier revision: a move changes a few of thousands of loads. */
final class SheetDifference {
    private SheetDifference() {}

    /** The whole sheet where lists have other entries than then, or what was shown then is not known any more. */
    static DeskSheet of(long earlier, Optional<PlanSheet> before, DeskSheet now) {
        if (before.isEmpty() || now.plan().isEmpty() || earlier > now.revision()) {
            return now;
        }
        PlanSheet old = before.get();
        PlanSheet next = now.plan().get();
        if (!isSame(old.panels(), next.panels(), PanelView::id)
                || !isSame(old.boards(), next.boards(), BoardView::id)
                || !isSame(old.loads(), next.loads(), LoadView::id)) {
            return now;
        }
        PlanSheet difference = new PlanSheet(
                next.name(),
                next.metrics(),
                next.violations(),
                next.judged(),
                next.phases(),
                changed(old.panels(), next.panels()),
                changed(old.boards(), next.boards()),
                changed(old.loads(), next.loads()),
                next.unplaced(),
                old.curves().equals(next.curves()) ? List.of() : next.curves());
        return new DeskSheet(
                now.revision(),
                OptionalLong.of(earlier),
                now.version(),
                now.folder(),
                now.projectFile(),
                now.planFile(),
                now.undo(),
                now.redo(),
                Optional.of(difference),
                now.told(),
                now.cautions());
    }

    private static <T> boolean isSame(List<T> before, List<T> now, Function<T, String> id) {
        return before.stream().map(id).toList().equals(now.stream().map(id).toList());
    }

    private static <T> List<T> changed(List<T> before, List<T> now) {
        List<T> changed = new ArrayList<>();
        for (int i = 0; i < now.size(); i++) {
            if (!now.get(i).equals(before.get(i))) {
                changed.add(now.get(i));
            }
        }
        return changed;
    }
}
