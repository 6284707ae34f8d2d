package evenrise.solver.report;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.NodeLimits;
import evenrise.solver.rework.WorkStage;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** What a clamp meter is to show where something was moved: idle, as a night works, and at full use; with room to write. */
final class StageCurrents {
    private static final String BLANK = "________";

    private StageCurrents() {}

    static List<String> lines(Evaluation evaluation, Plan before, WorkStage stage) {
        Layout after = evaluation.layout();
        Set<String> nodes = touched(after.distribution(), before, stage);
        List<NodeFigures> full = after.nodes();
        List<NodeFigures> idle = idle(after.project(), after.plan());
        Section section = new Section(Paint.NONE, "Check afterwards: current of each line, A, no more than");
        section.text(
                "Sums of magnitudes; in brackets by phasors, what a meter shows. Idle is what loads draw right after"
                        + " they came on, as most nights work; full use is the most that the project states.");
        Table table = new Table()
                .words("where")
                .words("line")
                .number("idle")
                .number("read")
                .number("full use")
                .number("allowed")
                .number("read at full use");
        List<NodeLimits> limits = NodeLimits.of(after.project());
        for (int i = 0; i < full.size(); i++) {
            if (i > 0 && !nodes.contains(full.get(i).node())) {
                continue;
            }
            String where = MeteredPoints.label(limits.get(i));
            for (Phase phase : full.get(i).runningAmps().keySet()) {
                table.row(
                        where,
                        phase.name(),
                        amps(idle.get(i), phase),
                        BLANK,
                        amps(full.get(i), phase),
                        Numbers.amps(limits.get(i).continuousAmps()),
                        BLANK);
                where = "";
            }
            table.row(
                    where,
                    "neutral",
                    Numbers.amps(idle.get(i).neutralAmps()) + " all on",
                    BLANK,
                    Numbers.amps(after.worstNeutralAmps().get(i)) + " whatever is on",
                    Numbers.amps(limits.get(i).neutralAmps()),
                    BLANK);
        }
        return section.table(table).lines();
    }

    private static String amps(NodeFigures node, Phase phase) {
        return Numbers.amps(node.runningAmps().get(phase)) + " ("
                + Numbers.amps(node.phasorAmps().get(phase)) + ")";
    }

    /** The same plant with every load at its idle current, whatever scenes there are. */
    private static List<NodeFigures> idle(Project project, Plan plan) {
        Project atIdle = project.with()
                .scenes(List.of())
                .loads(project.loads().stream()
                        .map(load -> load.withRunningAmps(load.idleAmps()))
                        .toList())
                .build();
        return Layout.of(atIdle, plan).nodes();
    }

    private static Set<String> touched(Distribution distribution, Plan before, WorkStage stage) {
        Set<String> nodes = new LinkedHashSet<>();
        Stream.concat(before.assignments().stream(), stage.after().assignments().stream())
                .filter(each -> stage.lockedOut().contains(each.load()))
                .map(Assignment::panel)
                .flatMap(panel -> MeteredPoints.upFrom(distribution, panel).stream())
                .forEach(nodes::add);
        return nodes;
    }
}
