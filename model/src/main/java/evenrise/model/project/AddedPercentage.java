package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;

/** What is added to a price in percent, such as freight, contingency, overheads or a tax. */
@FileRecord
public record AddedPercentage(
        @Field(meaning = "What it is for, as it is printed", atLeast = 1)
        String name,

        @Field(meaning = "How much is added", min = 0, max = 1000)
        double percent,

        @Field(meaning = "What it is taken of") PercentageBase of)
        implements AddedPercentageBuilder.With {
    public AddedPercentage {
        Contract.check(AddedPercentage.class, name, percent, of);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static AddedPercentageBuilder builder() {
        return Defaults.into(AddedPercentageBuilder.unset(), AddedPercentage.class);
    }
}
