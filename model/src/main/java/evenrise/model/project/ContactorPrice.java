package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;

/** What a contactor of one kind costs. */
@FileRecord
public record ContactorPrice(
        @Field(meaning = "Greatest number of poles, of all that is behind it", min = 1, max = 100)
        int upToPoles,

        @Field(
                meaning = "Greatest rating of a pole: of its breakers, or the stated one of the contactor",
                above = 0,
                max = 10_000)
        double upToAmps,

        @Field(meaning = "Price of one contactor, in the catalogue's currency", min = 0)
        double price,

        @Field(meaning = "Prices that hold from a number on, numbers rising", byDefault = "[]")
        List<PriceBreak> priceBreaks)
        implements ContactorPriceBuilder.With {
    public ContactorPrice {
        Contract.check(ContactorPrice.class, upToPoles, upToAmps, price, priceBreaks);
        priceBreaks = List.copyOf(priceBreaks);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static ContactorPriceBuilder builder() {
        return Defaults.into(ContactorPriceBuilder.unset(), ContactorPrice.class);
    }
}
