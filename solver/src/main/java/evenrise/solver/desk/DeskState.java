package evenrise.solver.desk;

import evenrise.model.file.SideNotes;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Project;
import evenrise.model.rules.ProjectIndex;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What lies on the desk at one moment.
 *
 * @param notes what the project's file says beside its format
 * @param plan settings and assignments, whole or not; its figures are not read
 */
record DeskState(Project project, SideNotes notes, Plan plan) {
    /** With no load placed, every board set to the first that its type offers. */
    static DeskState unplanned(Project project, SideNotes notes) {
        return new DeskState(
                        project,
                        notes,
                        Plan.builder().boards(List.of()).assignments(List.of()).build())
                .fitting();
    }

    DeskState withPlan(Plan next) {
        return new DeskState(project, notes, next);
    }

    /** The same plan under another project: loads and boards that are gone leave it, new boards are set as usual. */
    DeskState under(Project next, SideNotes kept) {
        return new DeskState(next, kept, plan).fitting();
    }

    private DeskState fitting() {
        ProjectIndex index = new ProjectIndex(project);
        Set<String> panels = project.panels().stream().map(panel -> panel.id()).collect(Collectors.toSet());
        List<BoardSetting> settings = project.boards().stream()
                .map(board -> plan.boards().stream()
                        .filter(each -> each.id().equals(board.id()))
                        .findFirst()
                        .orElseGet(() -> usual(board, index.typeOf(board))))
                .toList();
        return withPlan(Plan.builder()
                .boards(settings)
                .assignments(plan.assignments().stream()
                        .filter(each -> index.load(each.load()).isPresent() && panels.contains(each.panel()))
                        .map(each -> each.board().isEmpty()
                                        || index.board(each.board().get()).isPresent()
                                ? each
                                : each.with()
                                        .board(Optional.empty())
                                        .output(OptionalInt.empty())
                                        .build())
                        .toList())
                .madeBy(plan.madeBy())
                .build());
    }

    private static BoardSetting usual(Board board, BoardType type) {
        return type.isTimedByOutput()
                ? BoardSetting.ofEach(board.id())
                : new BoardSetting(
                        board.id(),
                        type.startDelaySeconds().get(0),
                        type.stepSeconds().get(0));
    }
}
