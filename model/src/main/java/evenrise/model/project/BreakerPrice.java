package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;

/** What a breaker of one kind costs. */
@FileRecord
public record BreakerPrice(
        @Field(meaning = "Poles", min = 1, max = 3) int poles,

        @Field(meaning = "Greatest rating of the kind", above = 0, max = 6300)
        double upToAmps,

        @Field(meaning = "Whether it is switched by a control board", byDefault = "true")
        boolean switched,

        @Field(meaning = "Price of one breaker, in the catalogue's currency", min = 0)
        double price,

        @Field(meaning = "Prices that hold from a number on, numbers rising", byDefault = "[]")
        List<PriceBreak> priceBreaks)
        implements BreakerPriceBuilder.With {
    public BreakerPrice {
        Contract.check(BreakerPrice.class, poles, upToAmps, switched, price, priceBreaks);
        priceBreaks = List.copyOf(priceBreaks);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static BreakerPriceBuilder builder() {
        return Defaults.into(BreakerPriceBuilder.unset(), BreakerPrice.class);
    }
}
