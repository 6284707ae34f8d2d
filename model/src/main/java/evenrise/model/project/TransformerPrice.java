package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;
import java.util.Optional;

/** What a transformer of one kind costs. */
@FileRecord
public record TransformerPrice(
        @Field(meaning = "Its connection; any when absent", optional = true)
        Optional<TransformerConnection> connection,

        @Field(meaning = "Greatest rated power of the kind", above = 0, max = 100_000)
        double upToKva,

        @Field(meaning = "Price of one transformer, in the catalogue's currency", min = 0)
        double price,

        @Field(meaning = "Prices that hold from a number on, numbers rising", byDefault = "[]")
        List<PriceBreak> priceBreaks)
        implements TransformerPriceBuilder.With {
    public TransformerPrice {
        Contract.check(TransformerPrice.class, connection, upToKva, price, priceBreaks);
        priceBreaks = List.copyOf(priceBreaks);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static TransformerPriceBuilder builder() {
        return Defaults.into(TransformerPriceBuilder.unset(), TransformerPrice.class);
    }
}
