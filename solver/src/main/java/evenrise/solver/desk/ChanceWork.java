package evenrise.solver.desk;

import evenrise.model.contract.Harmless;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.scatter.NodeScatter;
import evenrise.model.scatter.Percentile;
import evenrise.solver.app.Effort;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.Source;
import evenrise.solver.app.TextStyle;
import evenrise.solver.app.TrialsRequest;
import evenrise.solver.app.TrialsResult;
import evenrise.solver.desk.RehearsalAnswers.ChanceView;
import evenrise.solver.desk.RehearsalAnswers.NodeCurvesView;
import evenrise.solver.desk.RehearsalAnswers.PercentileView;
import evenrise.solver.desk.RehearsalAnswers.ScatterView;
import evenrise.solver.document.NodeCurves;
import evenrise.solver.document.SupplyCurves;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Switch-ons by chance beside the envelope of a node. */
final class ChanceWork implements DeskPart {
    private final Desk desk;
    private final Jobs jobs;

    ChanceWork(Desk desk, Jobs jobs) {
        this.desk = desk;
        this.jobs = jobs;
    }

    @Override
    public void offer(DeskRoutes routes) {
        routes.asked(
                "/api/chance",
                "Switch-ons are drawn by chance: percentiles of each distribution point's peak and dip",
                RehearsalRequests.Chance.class,
                ChanceView.class,
                this::chance);
        routes.asked(
                "/api/curves",
                "The current of a node over time, by the envelopes at nominal voltage",
                RehearsalRequests.AtNode.class,
                NodeCurvesView.class,
                this::curves);
    }

    private ChanceView chance(RehearsalRequests.Chance asked) {
        long revision = desk.revision();
        JudgedState now = desk.judged();
        TrialsResult result = jobs.trials(new TrialsRequest(
                Source.of(now.state().project()),
                Source.of(now.state().plan()),
                asked.trials(),
                new Effort(Optional.empty(), Effort.USUAL.moves(), asked.seed(), Effort.USUAL.threads()),
                Optional.empty(),
                Optional.empty()));
        return new ChanceView(
                revision,
                result.trials(),
                result.seed(),
                result.nodes().stream().map(each -> view(now.layout(), each)).toList(),
                result.text(TextStyle.PLAIN));
    }

    private static ScatterView view(Layout layout, NodeScatter each) {
        List<NodeCurves> curves = SupplyCurves.of(layout, each.node());
        return new ScatterView(
                each.node(),
                each.peakAmps().stream().map(ChanceWork::view).toList(),
                each.greatestAmps(),
                each.rangeAmps(),
                each.rangeBound(),
                limit(layout, each.node()),
                curves.stream().mapToDouble(NodeCurves::peakAmps).max().orElse(0),
                each.dipPercent().stream().map(ChanceWork::view).toList(),
                each.deepestPercent());
    }

    private static OptionalDouble limit(Layout layout, String node) {
        return SupplyCurves.of(layout, node).stream()
                .map(NodeCurves::inrushLimitAmps)
                .filter(OptionalDouble::isPresent)
                .findFirst()
                .orElse(OptionalDouble.empty());
    }

    private static PercentileView view(Percentile each) {
        return new PercentileView(each.percent(), each.value(), each.least(), each.most());
    }

    private NodeCurvesView curves(RehearsalRequests.AtNode asked) {
        List<NodeCurves> curves = SupplyCurves.of(desk.judged().layout(), asked.node());
        if (curves.isEmpty()) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    "there is no panel or node '" + Harmless.shown(asked.node()) + "', and it is not the "
                            + NodeFigures.SUPPLY + ".");
        }
        return new NodeCurvesView(
                asked.node(),
                curves.stream()
                        .map(each -> new RehearsalAnswers.NodeCurve(
                                each.system().orElse(""),
                                each.phases().stream()
                                        .map(phase -> new DeskAnswers.CurveView(
                                                each.system(), phase.phase(), phase.seconds(), phase.amps()))
                                        .toList()))
                        .toList());
    }
}
