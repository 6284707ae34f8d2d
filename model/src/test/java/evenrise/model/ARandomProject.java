package evenrise.model;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;

/**
 * Small legal projects from a seed; over many seeds every field is absent and present. Each is drawn around a plan that
 * keeps every hard rule, so none is impossible.
 */
public final class ARandomProject {
    private ARandomProject() {}

    /** A project and a plan of it that breaks no rule (without metrics, violations, origin). */
    public record Planted(Project project, Plan plan) {
        public Assignment assignment(String load) {
            return plan.assignments().stream()
                    .filter(a -> a.load().equals(load))
                    .findFirst()
                    .orElseThrow();
        }
    }

    /** About 5 to 40 loads in 1 to 4 panels. */
    public static Project of(long seed) {
        return planted(seed).project();
    }

    public static Planted planted(long seed) {
        return new PlantedPlant(seed).plant();
    }
}
