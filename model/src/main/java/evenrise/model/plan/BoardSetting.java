package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.OptionalDouble;

/** How one board is set. */
@FileRecord
public record BoardSetting(
        @Field(meaning = "The board", atLeast = 1) String id,

        @Field(
                meaning = "Time from its start to its first output; absent where each output has a time of its own",
                min = 0,
                least = 0,
                optional = true)
        OptionalDouble startDelaySeconds,

        @Field(
                meaning = "Time between outputs; absent where each output has a time of its own",
                min = 0,
                least = 0,
                optional = true)
        OptionalDouble stepSeconds)
        implements BoardSettingBuilder.With {
    public BoardSetting {
        Contract.check(BoardSetting.class, id, startDelaySeconds, stepSeconds);
    }

    /** Of a board with one start delay and one step. */
    public BoardSetting(String id, double startDelaySeconds, double stepSeconds) {
        this(id, OptionalDouble.of(startDelaySeconds), OptionalDouble.of(stepSeconds));
    }

    /** Of a board whose outputs have times of their own. */
    public static BoardSetting ofEach(String id) {
        return new BoardSetting(id, OptionalDouble.empty(), OptionalDouble.empty());
    }

    /** The start delay; 0 where there is none. */
    public double delaySeconds() {
        return startDelaySeconds.orElse(0);
    }

    /** The time between outputs; 0 where there is none. */
    public double betweenSeconds() {
        return stepSeconds.orElse(0);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static BoardSettingBuilder builder() {
        return Defaults.into(BoardSettingBuilder.unset(), BoardSetting.class);
    }
}
