package evenrise.solver.exact;

import evenrise.model.plan.Plan;
import evenrise.model.project.PlantPart;
import evenrise.model.project.Project;
import evenrise.solver.engine.PlanningRequest;
import java.util.EnumSet;
import java.util.Set;

/** Bounds the moves from a plan as built to any that keeps the rules, by {@link LeastMovesProgram}. */
final class LeastMovesProver {
    /** Of larger projects the program is too slow to be worth it. */
    static final int MOST_LOADS = 1_000;

    private static final double MOST_SECONDS = 30;
    private static final double PART_OF_THE_TIME = 0.3;

    /** A bound in floating point that is a hair above a whole number is that number. */
    private static final double ROUNDING = 1e-6;

    /** With these a place, a current or an output is not what the program takes it for. */
    private static final Set<PlantPart> OTHERS =
            EnumSet.of(PlantPart.NODES, PlantPart.FED_FROM, PlantPart.SCENES, PlantPart.CONTACTORS);

    private final ProgramBound bound = new ProgramBound(true);

    /** Whether it proves anything of such a project; loads nothing native. */
    static boolean suits(Project project) {
        return project.loads().size() <= MOST_LOADS
                && PlantPart.used(project, OTHERS).isEmpty();
    }

    /** No plan that keeps every hard rule has fewer; 0 where nothing is proven. */
    int moves(PlanningRequest request, Plan built) {
        double least = bound.amps(
                () -> new ProgramBound.Made(new LeastMovesProgram(request.project(), built, true).model(), 1),
                ExactEffort.beside(
                        request.budget(), PART_OF_THE_TIME, MOST_SECONDS, request.seed(), request.threads()));
        return (int) Math.ceil(least - ROUNDING);
    }
}
