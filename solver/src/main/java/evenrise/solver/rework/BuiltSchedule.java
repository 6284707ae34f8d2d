package evenrise.solver.rework;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A plan as built, as a panel schedule has it.
 *
 * @param plan where each breaker is, and each lead where the schedule says it
 * @param breakerAmps ratings on the schedule that are not those of the project, by load
 * @param statesControl whether it says outputs, and how boards are set that can be set in several ways
 * @param problems rows that cannot be used
 * @param notes what was taken how
 * @param spares breakers that feed nobody
 */
public record BuiltSchedule(
        Plan plan,
        Map<String, Double> breakerAmps,
        boolean statesControl,
        List<String> problems,
        List<String> notes,
        List<SpareBreaker> spares) {
    /** What is to be said where control is not judged. */
    public static final String WITHOUT_CONTROL =
            "The schedule does not say every output, or how boards are set (columns control, start_delay_s, step_s). So"
                    + " control is NOT judged: no output, time, group, order of switching, command or inrush limit, and the"
                    + " work has no leads. With a panel, switch off by hand what its boards switch in others.";

    public BuiltSchedule {
        breakerAmps = Map.copyOf(breakerAmps);
        problems = List.copyOf(problems);
        notes = List.copyOf(notes);
        spares = List.copyOf(spares);
    }

    /**
     * The project as far as the schedule lets it be judged: without control where that is not stated, so that no board
     * switches anything and nothing is said of times, order and inrush limits.
     */
    public Project judged(Project project) {
        return statesControl ? project : withoutControl(project);
    }

    /** A plan of it without outputs, for a project without control. */
    public Plan judged(Plan other) {
        return statesControl
                ? other
                : other.with()
                        .boards(List.of())
                        .assignments(other.assignments().stream()
                                .map(BuiltSchedule::withoutLead)
                                .toList())
                        .build();
    }

    private static Assignment withoutLead(Assignment seat) {
        return Assignment.builder()
                .load(seat.load())
                .panel(seat.panel())
                .slot(seat.slot())
                .phases(seat.phases())
                .build();
    }

    private static Project withoutControl(Project project) {
        return project.with()
                .boards(List.of())
                .loads(project.loads().stream()
                        .map(load -> load.with()
                                .switched(false)
                                .shutdownGroup(Optional.empty())
                                .comesAfter(List.of())
                                .comesWith(Optional.empty())
                                .needsGroups(Optional.empty())
                                .fixed(load.fixed()
                                        .with()
                                        .board(Optional.empty())
                                        .output(OptionalInt.empty())
                                        .onSeconds(OptionalDouble.empty())
                                        .build())
                                .build())
                        .toList())
                .supply(project.supply().withInrushLimitAmps(OptionalDouble.empty()))
                .panels(project.panels().stream()
                        .map(panel -> panel.withInrushLimitAmps(OptionalDouble.empty()))
                        .toList())
                .nodes(project.nodes().stream()
                        .map(node -> node.withInrushLimitAmps(OptionalDouble.empty()))
                        .toList())
                .build();
    }

    /** The project as it was, where a breaker has another rating on the schedule; empty where none has. */
    public Optional<Project> was(Project project) {
        if (breakerAmps.isEmpty()) {
            return Optional.empty();
        }
        List<Load> loads = project.loads().stream()
                .map(load ->
                        breakerAmps.containsKey(load.id()) ? load.withBreakerAmps(breakerAmps.get(load.id())) : load)
                .toList();
        return Optional.of(project.withLoads(loads));
    }
}
