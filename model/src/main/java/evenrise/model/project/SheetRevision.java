package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;
import java.util.Optional;

/** One revision of a set of sheets. */
public record SheetRevision(
        @Field(meaning = "Its letter or number", atLeast = 1)
        String revision,

        @Field(meaning = "Its date, as it is to be printed", atLeast = 1)
        String date,

        @Field(meaning = "What changed, or what the sheets were issued for", atLeast = 1)
        String what,

        @Field(meaning = "Who made it", atLeast = 1, optional = true)
        Optional<String> by) {
    public SheetRevision {
        Contract.check(SheetRevision.class, revision, date, what, by);
    }
}
