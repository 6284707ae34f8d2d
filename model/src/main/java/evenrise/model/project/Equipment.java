package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;
import java.util.Optional;

/** What a breaker feeds, as its datasheet describes it. */
public record Equipment(
        @Field(meaning = "Room that it heats", atLeast = 1, optional = true)
        Optional<String> room) {
    public Equipment {
        Contract.check(Equipment.class, room);
    }
}
