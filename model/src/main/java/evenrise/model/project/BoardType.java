package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;
import java.util.Optional;

/**
 * A kind of control board: it closes its outputs one after another, a step apart, a start delay after its command; or
 * each at a time of its own.
 */
@FileRecord
public record BoardType(
        @Field(meaning = "Name by which the type is referred to", atLeast = 1)
        String id,

        @Field(meaning = "Number of outputs, each switching one breaker; numbered from 1", min = 1, max = 1000)
        int outputs,

        @Field(
                meaning = "Start delays that can be set; none where each output has a time of its own",
                min = 0,
                max = 3600,
                least = 0.001,
                atLeast = 1,
                distinct = true,
                optional = true)
        List<Double> startDelaySeconds,

        @Field(
                meaning = "Times between outputs that can be set; none where each output has a time of its own",
                min = 0,
                max = 3600,
                least = 0.001,
                atLeast = 1,
                distinct = true,
                optional = true)
        List<Double> stepSeconds,

        @Field(meaning = "Price of one board, in the project's currency", min = 0, byDefault = "0")
        double price,

        @Field(
                meaning = "Whether its outputs follow each other by one start delay and one step, or each has a time of"
                        + " its own",
                byDefault = "\"stepped\"")
        BoardTiming timing,

        @Field(
                meaning = "Times that an output can be set to, where each has its own: a list, or a range as {from, to,"
                        + " by}; counted from the board's start",
                optional = true)
        Optional<OfferedTimes> timesSeconds,

        @Field(meaning = "Which output starts the boards that follow it", byDefault = "\"last-used\"")
        PassesOn passesOn,

        @Field(
                meaning = "Whether an emergency drops the whole board or chosen outputs: by output, loads that drop and"
                        + " loads that hold may be mixed",
                byDefault = "\"board\"")
        EmergencyBy emergencyBy,

        @Field(
                meaning = "Whether shutdown groups sit on it whole and without interruption, or anyhow",
                byDefault = "\"one-board\"")
        GroupSeating groups,

        @Field(meaning = "Outputs that a board in use leaves free", min = 0, max = 1000, byDefault = "0")
        int spareOutputs,

        @Field(
                meaning = "Whether switching off mirrors switching on, or each output has an off time of its own",
                byDefault = "\"mirror\"")
        OffTiming off,

        @Field(meaning = "Prices that hold from a number on, numbers rising", byDefault = "[]")
        List<PriceBreak> priceBreaks)
        implements BoardTypeBuilder.With {
    public BoardType {
        Contract.check(
                BoardType.class,
                id,
                outputs,
                startDelaySeconds,
                stepSeconds,
                price,
                timing,
                timesSeconds,
                passesOn,
                emergencyBy,
                groups,
                spareOutputs,
                off,
                priceBreaks);
        startDelaySeconds = List.copyOf(startDelaySeconds);
        stepSeconds = List.copyOf(stepSeconds);
        priceBreaks = List.copyOf(priceBreaks);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static BoardTypeBuilder builder() {
        return Defaults.into(BoardTypeBuilder.unset(), BoardType.class);
    }

    /** Whether each output has a time of its own. */
    public boolean isTimedByOutput() {
        return timing == BoardTiming.EACH;
    }
}
