package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.OptionalInt;

/** What a metre of a circuit's cable costs, laid. */
@FileRecord
public record CablePrice(
        @Field(meaning = "Poles of the breaker before it; any when absent", min = 1, max = 3, optional = true)
        OptionalInt poles,

        @Field(meaning = "Greatest rating of the breaker before it", above = 0, max = 6300)
        double upToAmps,

        @Field(meaning = "Price of a metre of cable, one way, in the catalogue's currency", above = 0)
        double pricePerMetre,

        @Field(meaning = "Price of a metre of conduit or tray for it", min = 0, byDefault = "0")
        double conduitPerMetre,

        @Field(meaning = "Hours of work for a metre; needs labour_hours", min = 0, byDefault = "0")
        double hoursPerMetre)
        implements CablePriceBuilder.With {
    public CablePrice {
        Contract.check(CablePrice.class, poles, upToAmps, pricePerMetre, conduitPerMetre, hoursPerMetre);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static CablePriceBuilder builder() {
        return Defaults.into(CablePriceBuilder.unset(), CablePrice.class);
    }
}
