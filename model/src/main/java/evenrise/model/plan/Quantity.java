package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;

/** One figure that the electrical review has computed. */
public record Quantity(
        @Field(meaning = "Load, panel, room or supply that it is about", atLeast = 1)
        String place,

        @Field(meaning = "What it is, as named in docs/electrical.md", atLeast = 1)
        String name,

        @Field(meaning = "The figure") double value,

        @Field(meaning = "Its unit: A, V, %, s, W, BTU/h; empty where there is none", byDefault = "\"\"")
        String unit) {
    public Quantity {
        Contract.check(Quantity.class, place, name, value, unit);
    }
}
