package evenrise.solver.sample;

import evenrise.model.plan.Plan;
import evenrise.model.project.Project;

/**
 * A drawn project with the layout it was drawn around.
 *
 * @param layout a bare plan (settings, panels, slots, boards, outputs) that keeps every hard rule of {@code project};
 *     a proof that one exists, not a good plan
 */
public record Venue(Project project, Plan layout) {}
