package evenrise.solver.document;

import evenrise.model.contract.Words;
import evenrise.model.project.Project;
import evenrise.model.project.Scene;
import evenrise.model.project.SceneUse;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.UseCurrents;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * One scene, or all loads at their running current, and the node that it uses most.
 *
 * @param weight in the objective's deviations; none of full use
 * @param factors what draws which part of its running current
 * @param basis why what is left out cannot run beside the rest
 * @param node with the greatest running current over what is allowed
 * @param neutralNode with the greatest neutral current over what is allowed
 */
public record SceneRow(
        String scene,
        OptionalDouble weight,
        String factors,
        String basis,
        String node,
        double usedPercent,
        String neutralNode,
        double neutralPercent) {
    private static final int NAMED = 6;

    /** In the project's order; ends with full use. */
    static List<SceneRow> of(Layout layout) {
        Project project = layout.project();
        List<SceneRow> rows = new ArrayList<>();
        for (int i = 0; i < project.scenes().size(); i++) {
            Scene scene = project.scenes().get(i);
            rows.add(of(
                    layout,
                    layout.sceneUses().get(i),
                    scene.id(),
                    OptionalDouble.of(scene.weight()),
                    factors(scene),
                    scene.basis().orElse("not stated")));
        }
        rows.add(of(layout, layout.fullUse(), "full use, no scene", OptionalDouble.empty(), "every load 1", ""));
        return rows;
    }

    private static SceneRow of(
            Layout layout, UseCurrents use, String scene, OptionalDouble weight, String factors, String basis) {
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        Point worst = null;
        Point worstNeutral = null;
        double most = -1;
        double mostNeutral = -1;
        for (Point point : layout.distribution().points()) {
            NodeLimits limit = limits.get(point.index());
            double running = 100 * use.greatestAmps(point) / limit.continuousAmps();
            double neutral = 100 * use.neutralAmps(point) / limit.neutralAmps();
            if (running > most) {
                most = running;
                worst = point;
            }
            if (neutral > mostNeutral) {
                mostNeutral = neutral;
                worstNeutral = point;
            }
        }
        return new SceneRow(scene, weight, factors, basis, worst.id(), most, worstNeutral.id(), mostNeutral);
    }

    private static String factors(Scene scene) {
        List<String> parts = new ArrayList<>();
        scene.use().forEach(use -> parts.add(who(use) + " " + Unrounded.rated(use.factor())));
        parts.add((scene.use().isEmpty() ? "every load " : "others ") + Unrounded.rated(scene.others()));
        return String.join("; ", parts);
    }

    private static String who(SceneUse use) {
        List<String> parts = new ArrayList<>();
        use.role().ifPresent(role -> parts.add(Words.word(role) + " loads"));
        use.group().ifPresent(group -> parts.add("group " + group));
        use.system().ifPresent(system -> parts.add("system " + system));
        use.loads()
                .ifPresent(loads -> parts.add(
                        loads.size() <= NAMED
                                ? String.join(", ", loads)
                                : loads.size() + " loads named in the project"));
        return parts.isEmpty() ? "every load" : String.join(", ", parts);
    }
}
