package evenrise.solver.engine;

import evenrise.model.plan.Bounds;
import evenrise.model.plan.MadeBy;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.PlanFinisher;
import evenrise.solver.bounds.ProvenBounds;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/** Plans for tests. */
public final class Plans {
    private Plans() {}

    /** The plan with everything that follows from it. */
    public static Plan finished(Project project, Plan bare) {
        return finished(project, bare, ProvenBounds.of(project));
    }

    /** The same without bounds that take their time: all are 0. */
    public static Plan judged(Project project, Plan bare) {
        return finished(project, bare, new Bounds(0, 0, 0, 0, 0));
    }

    private static Plan finished(Project project, Plan bare, Bounds bounds) {
        MadeBy madeBy = new MadeBy("test", "none", 1, 1, OptionalLong.of(1), OptionalDouble.empty());
        return PlanFinisher.finish(project, bare, madeBy, bounds);
    }
}
