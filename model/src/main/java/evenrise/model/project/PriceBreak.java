package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;

/** A unit price that holds for all of a kind, where there are so many of it or more. */
@FileRecord
public record PriceBreak(
        @Field(meaning = "Number of things of the kind in the project from which on it holds", min = 2, max = 1_000_000)
        int from,

        @Field(meaning = "Price of one, in the catalogue's currency", above = 0)
        double price)
        implements PriceBreakBuilder.With {
    public PriceBreak {
        Contract.check(PriceBreak.class, from, price);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static PriceBreakBuilder builder() {
        return Defaults.into(PriceBreakBuilder.unset(), PriceBreak.class);
    }
}
