package evenrise.model.rules;

import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.plan.Bounds;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import java.util.List;

/**
 * What no plan that keeps every hard rule can stay below. Short arguments, each in its place and in docs/bounds.md; they
 * are safe, not tight.
 */
public final class LowerBounds {
    private LowerBounds() {}

    public static Bounds of(Project project) {
        double peak = Math.max(largestSingleInrush(project), everythingOnButOneInrush(project));
        double duration = shortestSequence(project);
        double objective = Objective.of(project.objective(), peak, 0, 0, duration, fewestBoards(project));
        return new Bounds(objective, peak, 0, 0, duration);
    }

    /** A load draws at least its own peak, on some phase, when it comes on. */
    private static double largestSingleInrush(Project project) {
        return project.loads().stream()
                .mapToDouble(load -> {
                    InrushEnvelope envelope = InrushEnvelope.of(load, 0);
                    return envelope.baseAmps() + (load.switched() ? envelope.excessAmps() : 0);
                })
                .max()
                .orElse(0);
    }

    /**
     * When the last load comes on, every base is on, and that load's excess comes on top, on each of its poles. The phases
     * share the sum, so the worst has at least the mean.
     */
    private static double everythingOnButOneInrush(Project project) {
        double bases = 0;
        double leastExcess = Double.POSITIVE_INFINITY;
        for (Load load : project.loads()) {
            InrushEnvelope envelope = InrushEnvelope.of(load, 0);
            bases += envelope.baseAmps() * load.poles();
            if (load.switched()) {
                leastExcess = Math.min(leastExcess, envelope.excessAmps() * load.poles());
            }
        }
        double excess = Double.isInfinite(leastExcess) ? 0 : leastExcess;
        return (bases + excess) / project.supply().system().phases().size();
    }

    /** An amplifier comes on once every processing load has been on for its settling time. */
    private static double shortestSequence(Project project) {
        List<Load> switched = project.loads().stream().filter(Load::switched).toList();
        boolean waits = switched.stream().anyMatch(load -> load.role() == Role.AMPLIFIER);
        double settling = switched.stream()
                .filter(load -> load.role() == Role.PROCESSING)
                .mapToDouble(Load::settleSeconds)
                .max()
                .orElse(0);
        return Math.max(0, (waits ? settling : 0) - Tolerances.SECONDS);
    }

    /** Each board in use switches no more loads than the largest has outputs. */
    private static int fewestBoards(Project project) {
        long switched = project.loads().stream().filter(Load::switched).count();
        int largest = project.boardTypes().stream()
                .mapToInt(type -> type.outputs())
                .max()
                .orElse(1);
        return (int) ((switched + largest - 1) / largest);
    }
}
