package evenrise.model.rules;

import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.Scene;
import evenrise.model.project.SceneUse;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Running currents of the loads in each scene; one of all in full where a project states none. */
public final class SceneCurrents {
    private final List<InScene> scenes;
    private final Map<String, Double> most = new HashMap<>();

    /**
     * One scene.
     *
     * @param share of the objective's deviations, of 1
     * @param runningAmps rms by load
     */
    public record InScene(double share, Map<String, Double> runningAmps) {}

    private SceneCurrents(ProjectIndex index) {
        Project project = index.project();
        List<Load> loads = project.loads().stream()
                .map(each -> index.load(each.id()).orElseThrow())
                .toList();
        double total = project.scenes().stream().mapToDouble(Scene::weight).sum();
        scenes = project.scenes().isEmpty()
                ? List.of(new InScene(1, full(loads)))
                : project.scenes().stream()
                        .map(scene -> new InScene(scene.weight() / total, currents(scene, loads)))
                        .toList();
        scenes.forEach(scene -> scene.runningAmps().forEach((load, amps) -> most.merge(load, amps, Math::max)));
    }

    public static SceneCurrents of(ProjectIndex index) {
        return new SceneCurrents(index);
    }

    /** In the project's order. */
    public List<InScene> scenes() {
        return scenes;
    }

    /** Greatest running current of a load in any scene. */
    public double mostAmps(Load load) {
        return most.get(load.id());
    }

    private static Map<String, Double> full(List<Load> loads) {
        Map<String, Double> amps = new HashMap<>();
        loads.forEach(each -> amps.put(each.id(), each.runningAmps()));
        return amps;
    }

    /** Of the entries that name a load the last counts. */
    private static Map<String, Double> currents(Scene scene, List<Load> loads) {
        Map<String, Double> amps = new HashMap<>();
        loads.forEach(each -> amps.put(each.id(), scene.others() * each.runningAmps()));
        for (SceneUse use : scene.use()) {
            Set<String> named = new HashSet<>(use.loads().orElse(List.of()));
            for (Load load : loads) {
                if (names(use, named, load)) {
                    amps.put(load.id(), use.factor() * load.runningAmps());
                }
            }
        }
        return amps;
    }

    private static boolean names(SceneUse use, Set<String> named, Load load) {
        return (use.loads().isEmpty() || named.contains(load.id()))
                && (use.group().isEmpty() || use.group().equals(load.shutdownGroup()))
                && (use.role().isEmpty() || use.role().get() == load.role())
                && (use.system().isEmpty() || use.system().equals(load.system()));
    }
}
