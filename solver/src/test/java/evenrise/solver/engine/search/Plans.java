package evenrise.solver.engine.search;

import evenrise.model.plan.Bounds;
import evenrise.model.plan.MadeBy;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.PlanFinisher;
import evenrise.solver.bounds.ProvenBounds;

/** Plans for tests. */
public final class Plans {
    private Plans() {}

    /** The plan with everything that follows from it. */
    public static Plan finished(Project project, Plan bare) {
        return finished(project, bare, ProvenBounds.of(project));
    }

    /** The same without bounds that take their time: all are 0. */
    public static Plan judged(Project project, Plan bare) {
        return finished(
                project,
                bare,
                Bounds.builder()
                        .objective(0)
                        .peakInrushAmps(0)
                        .supplyDeviationAmps(0)
                        .panelDeviationsAmps(0)
                        .durationSeconds(0)
                        .build());
    }

    private static Plan finished(Project project, Plan bare, Bounds bounds) {
        MadeBy madeBy = MadeBy.builder()
                .softwareVersion("test")
                .projectSha256("none")
                .seed(1)
                .threads(1)
                .movesAllowed(1)
                .build();
        return PlanFinisher.finish(project, bare, madeBy, bounds);
    }
}
