package evenrise.solver.app;

import evenrise.model.answer.Supposition;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Referee;
import java.util.List;

/** Plans a project as it would be, near the plan as it is. */
final class WhatIfJob {
    private final PlannerSource planners;
    private final WhatIfRequest request;
    private final JobControl control;
    private final Watch watch;

    WhatIfJob(PlannerSource planners, WhatIfRequest request, JobControl control, Watch watch) {
        this.planners = planners;
        this.request = request;
        this.control = control;
        this.watch = watch;
    }

    WhatIfResult run() {
        if (request.suppositions().isEmpty()) {
            throw new JobFailed(JobFailed.Reason.REQUEST, "nothing is supposed. Say what is to be otherwise.");
        }
        Project project =
                Inputs.project(request.project(), watch.notes()).value().orElseThrow();
        Plan plan = Inputs.plan(request.plan(), project, watch.notes()).value().orElseThrow();
        Project supposed = project;
        for (Supposition each : request.suppositions()) {
            List<String> obstacles = each.obstacles(supposed, plan);
            if (!obstacles.isEmpty()) {
                throw new JobFailed(
                        JobFailed.Reason.REQUEST,
                        obstacles.stream()
                                .map(obstacle -> each.words() + ": " + obstacle + ".")
                                .toList());
            }
            supposed = each.in(supposed, plan);
        }
        PlanResult found = new PlanJob(
                        planners,
                        PlanRequest.of(Source.of(supposed))
                                .withFrom(Source.of(plan))
                                .withEffort(request.effort())
                                .withFewMoves(request.few()),
                        control,
                        watch)
                .run();
        return new WhatIfResult(
                request.suppositions(), Referee.judge(project, plan), found.evaluation(), found.impossible());
    }
}
