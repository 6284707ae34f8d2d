package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;

/** How one board is set. */
public record BoardSetting(
        @Field(meaning = "The board", atLeast = 1) String id,

        @Field(meaning = "Time from its start to its first output", min = 0)
        double startDelaySeconds,

        @Field(meaning = "Time between outputs", min = 0) double stepSeconds) {
    public BoardSetting {
        Contract.check(BoardSetting.class, id, startDelaySeconds, stepSeconds);
    }
}
