package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;
import java.util.OptionalDouble;

/** A kind of panel that can be bought. */
@FileRecord
public record PanelType(
        @Field(meaning = "Name by which the type is referred to", atLeast = 1)
        String id,

        @Field(meaning = "Number of breaker slots", min = 1, max = 1000)
        int slots,

        @Field(meaning = "Rated rms current of each line conductor", above = 0, max = 100_000)
        double ratedAmps,

        @Field(meaning = "Capacity of the neutral over that of a line conductor", above = 0, max = 4, byDefault = "1")
        double neutralFactor,

        @Field(meaning = "How slots are numbered", byDefault = "\"alternating\"")
        SlotNumbering numbering,

        @Field(meaning = "Price of one panel, in the catalogue's currency", min = 0)
        double price,

        @Field(meaning = "Prices that hold from a number on, numbers rising", byDefault = "[]")
        List<PriceBreak> priceBreaks,

        @Field(
                meaning = "Floor that one panel takes, the room before it included, for offers",
                min = 0,
                max = 1000,
                optional = true)
        OptionalDouble floorSquareMetres)
        implements PanelTypeBuilder.With {
    public PanelType {
        Contract.check(
                PanelType.class, id, slots, ratedAmps, neutralFactor, numbering, price, priceBreaks, floorSquareMetres);
        priceBreaks = List.copyOf(priceBreaks);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static PanelTypeBuilder builder() {
        return Defaults.into(PanelTypeBuilder.unset(), PanelType.class);
    }
}
