package evenrise.solver.app;

import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.sizing.Sizer;
import evenrise.model.sizing.Sizes;
import java.util.Optional;

/** Sizes a project. */
final class SizeJob {
    private final Watch watch;

    SizeJob(Watch watch) {
        this.watch = watch;
    }

    SizeResult run(SizeRequest request) {
        Project project =
                Inputs.project(request.project(), watch.notes()).value().orElseThrow();
        Optional<Plan> plan = request.plan()
                .map(source ->
                        Inputs.plan(source, project, watch.notes()).value().orElseThrow());
        watch.at(Stage.JUDGING);
        Sizes sizes = Sizer.of(project, plan);
        request.place().ifPresent(place -> {
            if (sizes.proposals().stream().noneMatch(each -> each.place().equals(place))) {
                throw new JobFailed(
                        JobFailed.Reason.REQUEST, "the project has no load, panel or node '" + place + "'.");
            }
        });
        return new SizeResult(sizes, request.place());
    }
}
