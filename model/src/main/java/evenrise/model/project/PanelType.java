package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;

/** A kind of panel that can be bought. */
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
        double price) {
    public PanelType {
        Contract.check(PanelType.class, id, slots, ratedAmps, neutralFactor, numbering, price);
    }
}
