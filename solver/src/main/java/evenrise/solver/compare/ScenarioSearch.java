package evenrise.solver.compare;

import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.search.Planner;
import java.util.List;
import java.util.Optional;

/** Plans one scenario; {@link #stop} ends it from any other thread. */
public final class ScenarioSearch {
    /** Moves with every group's boards fixed, to see whether that comes to a plan that keeps every rule. */
    private static final long SEATED_MOVES = 3000;

    private final Sought sought;
    private Planner running;
    private boolean isStopped;

    /**
     * What is sought.
     *
     * @param projectSha256 hash of the project's file
     * @param seated the project with groups' boards fixed in ways that are known to fit, the likeliest first
     * @param isSoundEnough whether a plan that keeps every rule is all that is sought
     */
    public record Sought(
            String projectSha256, Project project, List<Project> seated, long moves, long seed, boolean isSoundEnough) {
        public Sought {
            seated = List.copyOf(seated);
        }
    }

    public ScenarioSearch(Sought sought) {
        this.sought = sought;
    }

    /** What the search has come to. */
    public Sweep.Found found() {
        Optional<PlanningOutcome> seated = seated();
        PlanningRequest request = request(sought.project(), seated.map(PlanningOutcome::plan), sought.moves());
        PlanningOutcome outcome = sought.isSoundEnough() && seated.isPresent() ? seated.get() : planned(request);
        return new Sweep.Found(sought.projectSha256(), request, outcome);
    }

    /** Ends the search soon; what it has found so far is not what it would have found. */
    public synchronized void stop() {
        isStopped = true;
        if (running != null) {
            running.stop();
        }
    }

    /** A sound plan that begins where a packing put the groups; empty where that comes to none. */
    private Optional<PlanningOutcome> seated() {
        for (Project project : sought.seated()) {
            PlanningOutcome outcome =
                    planned(request(project, Optional.empty(), Math.min(sought.moves(), SEATED_MOVES)));
            if (isSound(sought.project(), outcome.plan())) {
                return Optional.of(outcome);
            }
        }
        return Optional.empty();
    }

    private static boolean isSound(Project project, Plan plan) {
        return Referee.judge(project, PlanFinisher.timed(project, plan))
                .violations()
                .isEmpty();
    }

    private PlanningRequest request(Project project, Optional<Plan> from, long budget) {
        return new PlanningRequest(project, from, new Budget.Moves(budget), sought.seed(), 1);
    }

    private PlanningOutcome planned(PlanningRequest request) {
        Planner planner = new Planner(request, any -> {});
        synchronized (this) {
            running = planner;
            if (isStopped) {
                planner.stop();
            }
        }
        return planner.plan();
    }
}
