package evenrise.solver.rework;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * One step of the work.
 *
 * @param load that it is about; empty for a board or the system
 * @param panel and slot where the breaker goes, or the panel that is isolated or live again
 * @param board and output where the lead goes or that is set, or the board that is set, isolated or live again
 * @param timeSeconds of an output that is set, from the begin of its board
 * @param system whose command it is; empty where one is for all
 */
public record WorkStep(
        WorkStepKind kind,
        Optional<String> load,
        Optional<String> panel,
        OptionalInt slot,
        Optional<String> board,
        OptionalInt output,
        OptionalDouble startDelaySeconds,
        OptionalDouble stepSeconds,
        OptionalDouble timeSeconds,
        Optional<String> system) {

    /** One that sets no output's time and gives no system's command. */
    public WorkStep(
            WorkStepKind kind,
            Optional<String> load,
            Optional<String> panel,
            OptionalInt slot,
            Optional<String> board,
            OptionalInt output,
            OptionalDouble startDelaySeconds,
            OptionalDouble stepSeconds) {
        this(
                kind,
                load,
                panel,
                slot,
                board,
                output,
                startDelaySeconds,
                stepSeconds,
                OptionalDouble.empty(),
                Optional.empty());
    }

    private static final WorkStep EMPTY = new WorkStep(
            WorkStepKind.SYSTEM_OFF,
            Optional.empty(),
            Optional.empty(),
            OptionalInt.empty(),
            Optional.empty(),
            OptionalInt.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty());

    static WorkStep system(WorkStepKind kind) {
        return EMPTY.of(kind, Optional.empty());
    }

    static WorkStep system(WorkStepKind kind, String system) {
        WorkStep all = system(kind);
        return new WorkStep(
                kind,
                all.load,
                all.panel,
                all.slot,
                all.board,
                all.output,
                all.startDelaySeconds,
                all.stepSeconds,
                all.timeSeconds,
                Optional.of(system));
    }

    static WorkStep load(WorkStepKind kind, String load) {
        return EMPTY.of(kind, Optional.of(load));
    }

    static WorkStep panel(WorkStepKind kind, String panel) {
        return system(kind).in(Optional.of(panel), OptionalInt.empty());
    }

    static WorkStep board(WorkStepKind kind, String board) {
        return system(kind).on(Optional.of(board), OptionalInt.empty());
    }

    static WorkStep breaker(WorkStepKind kind, String load, String panel, int slot) {
        return load(kind, load).in(Optional.of(panel), OptionalInt.of(slot));
    }

    static WorkStep spare(WorkStepKind kind, String panel, int slot) {
        return system(kind).in(Optional.of(panel), OptionalInt.of(slot));
    }

    static WorkStep lead(String load, Optional<String> board, OptionalInt output) {
        return load(WorkStepKind.RE_LAND, load).on(board, output);
    }

    static WorkStep lead(WorkStepKind kind, String load, String board, OptionalInt output) {
        return load(kind, load).on(Optional.of(board), output);
    }

    static WorkStep time(TimeChange change) {
        return new WorkStep(
                WorkStepKind.SET_OUTPUT,
                Optional.of(change.load()),
                Optional.empty(),
                OptionalInt.empty(),
                Optional.of(change.board()),
                OptionalInt.of(change.output()),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(change.seconds()),
                Optional.empty());
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

    private WorkStep of(WorkStepKind otherKind, Optional<String> otherLoad) {
        return new WorkStep(otherKind, otherLoad, panel, slot, board, output, startDelaySeconds, stepSeconds);
    }

    private WorkStep in(Optional<String> otherPanel, OptionalInt otherSlot) {
        return new WorkStep(kind, load, otherPanel, otherSlot, board, output, startDelaySeconds, stepSeconds);
    }

    private WorkStep on(Optional<String> otherBoard, OptionalInt otherOutput) {
        return new WorkStep(kind, load, panel, slot, otherBoard, otherOutput, startDelaySeconds, stepSeconds);
    }
}
