package evenrise.solver.rework;

import evenrise.model.rules.ProjectIndex;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** How long each step of a stage takes one crew, by the kind of work that it is. */
final class StageMinutes {
    private final ProjectIndex index;
    private final WorkMinutes minutes;
    private final Map<String, LoadChange> changes = new HashMap<>();

    StageMinutes(ProjectIndex index, WorkMinutes minutes, Changes changes) {
        this.index = index;
        this.minutes = minutes;
        changes.loads().forEach(change -> this.changes.put(change.load(), change));
    }

    List<Double> of(List<WorkStep> steps) {
        return steps.stream()
                .map(step -> kind(step).map(minutes::of).orElse(0.0))
                .toList();
    }

    /** Empty for what the time of another step covers: a lock comes off, what was isolated is live again. */
    private Optional<MoveKind> kind(WorkStep step) {
        return switch (step.kind()) {
            case SYSTEM_OFF -> Optional.of(MoveKind.SHUTDOWN);
            case SWITCH_OFF, SWITCH_ON -> Optional.of(MoveKind.SWITCHING);
            case ISOLATE_PANEL, ISOLATE_BOARD -> Optional.of(MoveKind.ISOLATION);
            case PARK, TAKE_OUT -> Optional.of(MoveKind.SAME_PANEL);
            case RE_TERMINATE, PUT_IN, USE_SPARE -> change(step).flatMap(LoadChange::breakerKind);
            case REMOVE, LEAVE_SPARE, REMOVE_SPARE -> Optional.of(MoveKind.REMOVAL);
            case LIFT_LEAD, REMOVE_LEAD -> Optional.of(MoveKind.LEAD);
            case RE_LAND -> change(step).flatMap(change -> change.leadKind(index));
            case SET_BOARD, SET_OUTPUT -> Optional.of(MoveKind.SETTING);
            case FUNCTION_TEST -> Optional.of(MoveKind.TEST);
            case LOCK_OUT,
                    CHECK_ROTATION,
                    MAKE_READY,
                    ENERGISE_PANEL,
                    ENERGISE_BOARD,
                    UNLOCK,
                    ENERGISE,
                    SYSTEM_ON,
                    RELABEL -> Optional.empty();
        };
    }

    private Optional<LoadChange> change(WorkStep step) {
        return step.load().map(changes::get);
    }
}
