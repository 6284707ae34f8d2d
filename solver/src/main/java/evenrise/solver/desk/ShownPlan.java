package evenrise.solver.desk;

import evenrise.model.plan.BoardSetting;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.SlotLayout;
import evenrise.model.project.SlotNumbering;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.PhasePeak;
import evenrise.model.rules.Placement;
import evenrise.model.rules.Verdict;
import evenrise.solver.desk.DeskAnswers.BoardView;
import evenrise.solver.desk.DeskAnswers.CurveView;
import evenrise.solver.desk.DeskAnswers.LoadView;
import evenrise.solver.desk.DeskAnswers.PanelView;
import evenrise.solver.desk.DeskAnswers.PlanSheet;
import evenrise.solver.document.SupplyCurves;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/** Draws up what windows show of a plan. */
final class ShownPlan {
    private final Layout layout;
    private final Verdict verdict;

    ShownPlan(Layout layout, Verdict verdict) {
        this.layout = layout;
        this.verdict = verdict;
    }

    /** @param judged what the assessment says, where it is there */
    PlanSheet sheet(Optional<String> judged) {
        return new PlanSheet(
                layout.project().name(),
                verdict.metrics(),
                verdict.violations(),
                judged,
                verdict.nodes().get(0).peaks().stream()
                        .map(each -> each.phase().name())
                        .toList(),
                layout.project().panels().stream().map(this::panel).toList(),
                layout.project().boards().stream().map(this::board).toList(),
                layout.project().loads().stream().map(this::load).toList(),
                layout.project().loads().stream()
                        .map(Load::id)
                        .filter(id -> layout.placement(id).isEmpty())
                        .toList(),
                SupplyCurves.of(layout).stream()
                        .flatMap(curves -> curves.phases().stream()
                                .map(phase -> new CurveView(
                                        curves.system(),
                                        phase.phase(),
                                        rounded(phase.seconds()),
                                        rounded(phase.amps()))))
                        .toList());
    }

    /** To thousandths: finer than a screen, and a third of the text. */
    private static List<Double> rounded(List<Double> numbers) {
        return numbers.stream().map(each -> Math.round(each * 1000) / 1000.0).toList();
    }

    private PanelView panel(Panel panel) {
        SlotLayout geometry = layout.index().slotsOf(panel);
        NodeFigures figures =
                verdict.nodes().get(layout.distribution().of(panel).index());
        List<Phase> phases = List.copyOf(figures.runningAmps().keySet());
        return new PanelView(
                panel.id(),
                panel.slots(),
                panel.numbering() == SlotNumbering.ALTERNATING,
                IntStream.rangeClosed(1, panel.slots())
                        .mapToObj(geometry::phase)
                        .toList(),
                panel.reservedSlots(),
                panel.ratedAmps(),
                phases,
                phases.stream().map(figures.runningAmps()::get).toList(),
                figures.imbalancePercent(),
                figures.neutralAmps(),
                figures.peaks().stream().map(PhasePeak::amps).toList(),
                panel.inrushLimitAmps());
    }

    private BoardView board(Board board) {
        BoardType type = layout.index().typeOf(board);
        BoardSetting setting = layout.setting(board);
        return new BoardView(
                board.id(),
                board.panel(),
                type.id(),
                type.outputs(),
                type.isTimedByOutput(),
                type.startDelaySeconds(),
                type.stepSeconds(),
                setting.startDelaySeconds(),
                setting.stepSeconds(),
                board.after());
    }

    private LoadView load(Load load) {
        Optional<Placement> place = layout.placement(load.id());
        return new LoadView(
                load.id(),
                load.name(),
                load.role(),
                load.poles(),
                load.breakerAmps(),
                load.runningAmps(),
                load.switched(),
                load.shutdownGroup(),
                !load.fixed().equals(FixedPlace.NONE),
                place.map(each -> each.assignment().panel()),
                place.map(Placement::slots).orElse(List.of()),
                place.map(Placement::phases).orElse(List.of()),
                place.flatMap(Placement::board).map(Board::id),
                place.filter(each -> each.board().isPresent())
                        .map(each -> each.assignment().output())
                        .orElse(OptionalInt.empty()),
                place.map(Placement::onSeconds).orElse(OptionalDouble.empty()),
                load.settleSeconds());
    }
}
