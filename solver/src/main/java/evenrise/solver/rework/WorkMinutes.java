package evenrise.solver.rework;

import evenrise.model.project.Project;
import evenrise.model.project.WorkTimes;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;

/** How long each kind of work takes: as the project states it, else a usual value. */
public final class WorkMinutes {
    private final Map<MoveKind, OptionalDouble> stated = new EnumMap<>(MoveKind.class);

    private WorkMinutes(WorkTimes times) {
        for (MoveKind kind : MoveKind.values()) {
            stated.put(kind, kind.statedMinutes(times));
        }
    }

    public static WorkMinutes of(Project project) {
        return new WorkMinutes(
                project.work().orElseGet(() -> WorkTimes.builder().build()));
    }

    public double of(MoveKind kind) {
        return stated.get(kind).orElse(kind.usualMinutes());
    }

    /** Whether the project says it; else it is common practice, without a source. */
    public boolean isStated(MoveKind kind) {
        return stated.get(kind).isPresent();
    }
}
