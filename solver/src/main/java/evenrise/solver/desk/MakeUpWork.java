package evenrise.solver.desk;

import evenrise.model.project.Panel;
import evenrise.model.project.Spare;
import evenrise.model.review.NextLoad;
import evenrise.model.rules.FreeSlots;
import evenrise.model.rules.Layout;
import evenrise.solver.desk.EstimateAnswers.BoardSpare;
import evenrise.solver.desk.EstimateAnswers.MakeUpView;
import evenrise.solver.desk.EstimateAnswers.PanelSpare;
import java.util.Optional;

/** One make-up of the estimate: the room that its plan leaves, and its way onto the desk. */
final class MakeUpWork implements DeskPart {
    private final Desk desk;
    private final EstimateFolder folder;

    MakeUpWork(Desk desk, DeskFiles files) {
        this.desk = desk;
        this.folder = new EstimateFolder(files);
    }

    @Override
    public void offer(DeskRoutes routes) {
        routes.asked(
                "/api/estimate/makeup",
                "A make-up's plan with the room that it leaves; nothing is changed",
                EstimateRequests.OfMakeUp.class,
                MakeUpView.class,
                this::look);
        routes.asked(
                "/api/estimate/take",
                "A make-up and its plan come onto the desk",
                EstimateRequests.OfMakeUp.class,
                DeskAnswers.DeskSheet.class,
                this::take);
    }

    private MakeUpView look(EstimateRequests.OfMakeUp asked) {
        JudgedState makeUp = JudgedState.of(folder.state(asked.files()));
        Layout layout = makeUp.layout();
        return new MakeUpView(
                asked.files(),
                new ShownPlan(layout, makeUp.verdict()).sheet(Optional.empty()),
                NextLoad.places(layout, 1).stream()
                        .map(each -> new SupposedAnswers.RoomView(
                                each.panel(),
                                each.slots(),
                                each.phases(),
                                each.amps(),
                                each.limit(),
                                each.countsFeeder()))
                        .toList(),
                layout.project().panels().stream()
                        .map(panel -> spare(layout, panel))
                        .toList(),
                layout.project().boards().stream()
                        .map(board -> new BoardSpare(
                                board.id(),
                                board.type(),
                                board.panel(),
                                layout.index().typeOf(board).outputs(),
                                layout.outputs(board.id()).size(),
                                layout.outputs(board.id()).isEmpty()
                                        ? 0
                                        : layout.index().typeOf(board).spareOutputs()))
                        .toList());
    }

    private static PanelSpare spare(Layout layout, Panel panel) {
        Optional<Spare> asked = layout.project().spareIn(panel);
        return new PanelSpare(
                panel.id(),
                FreeSlots.of(panel, layout).count(),
                asked.map(Spare::slots).orElse(0),
                asked.map(Spare::runningPercent).orElse(0.0));
    }

    private DeskAnswers.DeskSheet take(EstimateRequests.OfMakeUp asked) {
        DeskState makeUp = folder.state(asked.files());
        desk.change("make-up " + asked.files(), now -> makeUp);
        return desk.sheet();
    }
}
