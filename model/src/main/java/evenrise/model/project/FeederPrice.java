package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;

/** What a feeder of a panel or node costs: its device, and its cable by length. */
@FileRecord
public record FeederPrice(
        @Field(meaning = "Greatest rating of its device of the kind", above = 0, max = 100_000)
        double upToAmps,

        @Field(meaning = "Price of one feeder but for its cable, in the catalogue's currency", min = 0)
        double price,

        @Field(
                meaning =
                        "Price of a metre of its cable, one way; the length is that of the feeder's cable, and there is no price where that is not stated",
                min = 0,
                byDefault = "0")
        double pricePerMetre,

        @Field(
                meaning = "Prices of one feeder but for its cable that hold from a number on, numbers rising",
                byDefault = "[]")
        List<PriceBreak> priceBreaks)
        implements FeederPriceBuilder.With {
    public FeederPrice {
        Contract.check(FeederPrice.class, upToAmps, price, pricePerMetre, priceBreaks);
        priceBreaks = List.copyOf(priceBreaks);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static FeederPriceBuilder builder() {
        return Defaults.into(FeederPriceBuilder.unset(), FeederPrice.class);
    }
}
