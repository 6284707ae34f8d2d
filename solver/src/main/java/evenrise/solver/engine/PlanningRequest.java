package evenrise.solver.engine;

import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import java.util.Optional;

/**
 * What to plan and how hard to try.
 *
 * @param from an earlier plan to start at; a plan is constructed where there is none
 * @param threads independent searches, of which the best plan is kept
 * @param placesAll whether a place that breaks a rating is better than none
 * @param improves whether the plan to start at was searched for, so that what it has is not to be lost before better is
 *     found
 */
public record PlanningRequest(
        Project project,
        Optional<Plan> from,
        Budget budget,
        long seed,
        int threads,
        boolean placesAll,
        boolean improves) {

    /** Whether the plan to start at is one from which every move costs what the objective says. */
    public boolean keepsFrom() {
        return project.objective().move() > 0;
    }

    public PlanningRequest(Project project, Optional<Plan> from, Budget budget, long seed, int threads) {
        this(project, from, budget, seed, threads, false, false);
    }

    /** The same search with another budget. */
    public PlanningRequest withBudget(Budget value) {
        return new PlanningRequest(project, from, value, seed, threads, placesAll, improves);
    }

    /** The same search from another plan. */
    public PlanningRequest withFrom(Plan value) {
        return new PlanningRequest(project, Optional.of(value), budget, seed, threads, placesAll, improves);
    }

    /** The same search, from a plan that was searched for. */
    public PlanningRequest improving() {
        return new PlanningRequest(project, from, budget, seed, threads, placesAll, true);
    }
}
