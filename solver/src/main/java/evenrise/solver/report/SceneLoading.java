package evenrise.solver.report;

import evenrise.model.project.Project;
import evenrise.model.project.Scene;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.UseCurrents;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One scene, or full use, and the node that it uses most.
 *
 * @param scene empty of full use: every load at its running current
 * @param weight in the objective's deviations; none of full use
 * @param basis why what is left out cannot run beside the rest; empty where none is stated
 * @param node with the greatest running current over what is allowed
 */
public record SceneLoading(
        Optional<String> scene, OptionalDouble weight, String node, double usedPercent, Optional<String> basis) {

    /** In the project's order, ending with full use; nothing where the project states no scene. */
    public static List<SceneLoading> of(Layout layout) {
        Project project = layout.project();
        List<SceneLoading> rows = new ArrayList<>();
        for (int i = 0; i < project.scenes().size(); i++) {
            Scene scene = project.scenes().get(i);
            rows.add(of(
                    layout,
                    layout.sceneUses().get(i),
                    Optional.of(scene.id()),
                    OptionalDouble.of(scene.weight()),
                    scene.basis()));
        }
        if (!rows.isEmpty()) {
            rows.add(of(layout, layout.fullUse(), Optional.empty(), OptionalDouble.empty(), Optional.empty()));
        }
        return rows;
    }

    private static SceneLoading of(
            Layout layout, UseCurrents use, Optional<String> scene, OptionalDouble weight, Optional<String> basis) {
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        Map.Entry<Point, Double> most = layout.distribution().points().stream()
                .map(point -> Map.entry(
                        point,
                        100
                                * use.greatestAmps(point)
                                / limits.get(point.index()).continuousAmps()))
                .reduce((kept, next) -> next.getValue() > kept.getValue() ? next : kept)
                .orElseThrow();
        return new SceneLoading(scene, weight, most.getKey().id(), most.getValue(), basis);
    }
}
