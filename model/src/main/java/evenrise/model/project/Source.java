package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;

/** What stands behind the supply. */
public record Source(
        @Field(meaning = "Rated apparent power", above = 0, max = 100_000)
        double ratedKva) {
    public Source {
        Contract.check(Source.class, ratedKva);
    }
}
