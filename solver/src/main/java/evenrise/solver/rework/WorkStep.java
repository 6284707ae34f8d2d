package evenrise.solver.rework;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * One step of the work.
 *
 * @param load that it is about; empty for a board or the system
 * @param panel and slot where the breaker goes, or the panel that is isolated or live again
 * @param board and output where the lead goes, or the board that is set, isolated or live again
 */
public record WorkStep(
        WorkStepKind kind,
        Optional<String> load,
        Optional<String> panel,
        OptionalInt slot,
        Optional<String> board,
        OptionalInt output,
        OptionalDouble startDelaySeconds,
        OptionalDouble stepSeconds) {

    static WorkStep system(WorkStepKind kind) {
        return new WorkStep(
                kind,
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    static WorkStep load(WorkStepKind kind, String load) {
        return new WorkStep(
                kind,
                Optional.of(load),
                Optional.empty(),
                OptionalInt.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    static WorkStep panel(WorkStepKind kind, String panel) {
        return new WorkStep(
                kind,
                Optional.empty(),
                Optional.of(panel),
                OptionalInt.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    static WorkStep board(WorkStepKind kind, String board) {
        return new WorkStep(
                kind,
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                Optional.of(board),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    static WorkStep breaker(WorkStepKind kind, String load, String panel, int slot) {
        return new WorkStep(
                kind,
                Optional.of(load),
                Optional.of(panel),
                OptionalInt.of(slot),
                Optional.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    static WorkStep lead(String load, Optional<String> board, OptionalInt output) {
        return new WorkStep(
                WorkStepKind.RE_LAND,
                Optional.of(load),
                Optional.empty(),
                OptionalInt.empty(),
                board,
                output,
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    static WorkStep setting(SettingChange change) {
        return new WorkStep(
                WorkStepKind.SET_BOARD,
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                Optional.of(change.board()),
                OptionalInt.empty(),
                OptionalDouble.of(change.to().delaySeconds()),
                OptionalDouble.of(change.to().betweenSeconds()));
    }
}
