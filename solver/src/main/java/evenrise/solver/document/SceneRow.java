package evenrise.solver.document;

import evenrise.model.contract.Words;
import evenrise.model.project.Scene;
import evenrise.model.project.SceneUse;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.UseCurrents;
import evenrise.solver.report.SceneLoading;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * One scene, or all loads at their running current, with what draws how much and the neutral that it uses most.
 *
 * @param factors what draws which part of its running current
 * @param neutralNode with the greatest neutral current over what is allowed
 */
public record SceneRow(SceneLoading loading, String factors, String neutralNode, double neutralPercent) {
    private static final int NAMED = 6;

    /** In the project's order; ends with full use. Nothing where the project states no scene. */
    static List<SceneRow> of(Layout layout) {
        List<Scene> scenes = layout.project().scenes();
        List<SceneRow> rows = new ArrayList<>();
        for (SceneLoading loading : SceneLoading.of(layout)) {
            int scene = rows.size();
            rows.add(
                    scene < scenes.size()
                            ? of(layout, layout.sceneUses().get(scene), loading, factors(scenes.get(scene)))
                            : of(layout, layout.fullUse(), loading, "every load 1"));
        }
        return rows;
    }

    private static SceneRow of(Layout layout, UseCurrents use, SceneLoading loading, String factors) {
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        Map.Entry<Point, Double> most = layout.distribution().points().stream()
                .map(point -> Map.entry(
                        point,
                        100 * use.neutralAmps(point) / limits.get(point.index()).neutralAmps()))
                .reduce((kept, next) -> next.getValue() > kept.getValue() ? next : kept)
                .orElseThrow();
        return new SceneRow(loading, factors, most.getKey().id(), most.getValue());
    }

    String scene() {
        return loading.scene().orElse("full use, no scene");
    }

    /** Of full use there is none. */
    String basis() {
        return loading.scene().isEmpty() ? "" : loading.basis().orElse("not stated");
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
