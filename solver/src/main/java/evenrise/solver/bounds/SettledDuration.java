package evenrise.solver.bounds;

import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.rules.ProjectIndex;
import evenrise.model.rules.Tolerances;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** How long the longest sequence takes at least: amplifiers come on no earlier than the processing of their system has settled. */
final class SettledDuration {
    private SettledDuration() {}

    static double seconds(Project project) {
        ProjectIndex index = new ProjectIndex(project);
        Map<Optional<String>, Double> settled = new HashMap<>();
        for (Load given : project.loads()) {
            Load load = index.load(given.id()).orElseThrow();
            if (load.switched() && load.role() == Role.PROCESSING) {
                settled.merge(load.system(), load.settleSeconds(), Math::max);
            }
        }
        return project.loads().stream()
                .map(each -> index.load(each.id()).orElseThrow())
                .filter(load -> load.switched() && load.role() == Role.AMPLIFIER)
                .mapToDouble(load -> settled.getOrDefault(load.system(), 0.0) - Tolerances.SECONDS)
                .max()
                .stream()
                .map(seconds -> Math.max(0, seconds))
                .findFirst()
                .orElse(0);
    }
}
