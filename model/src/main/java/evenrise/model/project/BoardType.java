package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;

/** A kind of control board: it closes its outputs one after another, a step apart, a start delay after its command. */
@FileRecord
public record BoardType(
        @Field(meaning = "Name by which the type is referred to", atLeast = 1)
        String id,

        @Field(meaning = "Number of outputs, each switching one breaker; numbered from 1", min = 1, max = 1000)
        int outputs,

        @Field(
                meaning = "Start delays that can be set",
                min = 0,
                max = 3600,
                least = 0.001,
                atLeast = 1,
                distinct = true)
        List<Double> startDelaySeconds,

        @Field(
                meaning = "Times between outputs that can be set",
                min = 0,
                max = 3600,
                least = 0.001,
                atLeast = 1,
                distinct = true)
        List<Double> stepSeconds,

        @Field(meaning = "Price of one board, in the project's currency", min = 0, byDefault = "0")
        double price)
        implements BoardTypeBuilder.With {
    public BoardType {
        Contract.check(BoardType.class, id, outputs, startDelaySeconds, stepSeconds, price);
        startDelaySeconds = List.copyOf(startDelaySeconds);
        stepSeconds = List.copyOf(stepSeconds);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static BoardTypeBuilder builder() {
        return Defaults.into(BoardTypeBuilder.unset(), BoardType.class);
    }
}
