package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;

/** How one board is set. */
@FileRecord
public record BoardSetting(
        @Field(meaning = "The board", atLeast = 1) String id,

        @Field(meaning = "Time from its start to its first output", min = 0, least = 0)
        double startDelaySeconds,

        @Field(meaning = "Time between outputs", min = 0, least = 0)
        double stepSeconds)
        implements BoardSettingBuilder.With {
    public BoardSetting {
        Contract.check(BoardSetting.class, id, startDelaySeconds, stepSeconds);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static BoardSettingBuilder builder() {
        return Defaults.into(BoardSettingBuilder.unset(), BoardSetting.class);
    }
}
