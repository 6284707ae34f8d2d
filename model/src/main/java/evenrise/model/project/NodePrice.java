package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;

/** What a node of the distribution costs that is neither a transformer nor a source. */
@FileRecord
public record NodePrice(
        @Field(meaning = "Greatest rating of the kind", above = 0, max = 100_000)
        double upToAmps,

        @Field(meaning = "Price of one node, in the catalogue's currency", min = 0)
        double price,

        @Field(meaning = "Prices that hold from a number on, numbers rising", byDefault = "[]")
        List<PriceBreak> priceBreaks)
        implements NodePriceBuilder.With {
    public NodePrice {
        Contract.check(NodePrice.class, upToAmps, price, priceBreaks);
        priceBreaks = List.copyOf(priceBreaks);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static NodePriceBuilder builder() {
        return Defaults.into(NodePriceBuilder.unset(), NodePrice.class);
    }
}
