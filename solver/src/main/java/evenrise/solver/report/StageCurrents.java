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
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;

/** What a clamp meter is to show where something was moved: idle, as a night works, and at full use. */
final class StageCurrents {
    private StageCurrents() {}

    /** The supply first, then what feeds a panel that a breaker of the stage is in, or was. */
    static List<MeteredLine> of(Evaluation evaluation, Plan before, WorkStage stage) {
        Layout after = evaluation.layout();
        Set<String> nodes = touched(after.distribution(), before, stage);
        List<NodeFigures> full = after.nodes();
        List<NodeFigures> idle = idle(after.project(), after.plan());
        List<NodeLimits> limits = NodeLimits.of(after.project());
        List<MeteredLine> lines = new ArrayList<>();
        for (int i = 0; i < full.size(); i++) {
            if (i > 0 && !nodes.contains(full.get(i).node())) {
                continue;
            }
            String where = MeteredPoints.label(limits.get(i));
            for (Phase phase : full.get(i).runningAmps().keySet()) {
                lines.add(new MeteredLine(
                        where,
                        phase.name(),
                        idle.get(i).runningAmps().get(phase),
                        OptionalDouble.of(idle.get(i).phasorAmps().get(phase)),
                        full.get(i).runningAmps().get(phase),
                        OptionalDouble.of(full.get(i).phasorAmps().get(phase)),
                        limits.get(i).continuousAmps()));
            }
            lines.add(new MeteredLine(
                    where,
                    MeteredLine.NEUTRAL,
                    idle.get(i).neutralAmps(),
                    OptionalDouble.empty(),
                    after.worstNeutralAmps().get(i),
                    OptionalDouble.empty(),
                    limits.get(i).neutralAmps()));
        }
        return lines;
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
