package evenrise.model.check;

import evenrise.model.project.Scene;
import evenrise.model.project.SceneUse;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;

/** Scenes name what there is, and at least one counts. */
final class Scenes {
    private Scenes() {}

    static void check(ProjectParts parts, Consumer<Objection> found) {
        List<Scene> scenes = parts.project.scenes();
        for (int i = 0; i < scenes.size(); i++) {
            List<SceneUse> uses = scenes.get(i).use();
            for (int k = 0; k < uses.size(); k++) {
                use(parts, uses.get(k), "/scenes/" + i + "/use/" + k, found);
            }
        }
        double weights = scenes.stream().mapToDouble(Scene::weight).sum();
        if (!scenes.isEmpty() && weights == 0 && parts.knows("/scenes")) {
            found.accept(Objection.error(
                    "/scenes/0/weight",
                    "0, as that of every scene",
                    "more than 0 for one scene at least",
                    "Maybe leave it out: it is 1 then."));
        }
    }

    private static void use(ProjectParts parts, SceneUse use, String at, Consumer<Objection> found) {
        List<String> loads = use.loads().orElse(List.of());
        for (int j = 0; j < loads.size(); j++) {
            known(loads.get(j), parts.loads.keySet(), "loads", at + "/loads/" + j, parts, found);
        }
        use.group().ifPresent(id -> known(id, parts.groups.keySet(), "shutdown_groups", at + "/group", parts, found));
        use.system().ifPresent(id -> known(id, parts.systems.keySet(), "systems", at + "/system", parts, found));
    }

    private static void known(
            String id, Set<String> known, String list, String at, ProjectParts parts, Consumer<Objection> found) {
        if (!known.contains(id) && parts.knows("/" + list)) {
            String cure = Nearest.cure(id, known, known.isEmpty() ? "There are none." : "Maybe it was renamed.");
            found.accept(Objection.error(at, Shown.quoted(id), "the id of one of the " + list.replace('_', ' '), cure));
        }
    }
}
