package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.Optional;

/** One figure that the electrical review has computed. */
@FileRecord
public record Quantity(
        @Field(meaning = "Load, panel, room or supply that it is about", atLeast = 1)
        String place,

        @Field(meaning = "What it is, as named in docs/electrical.md", atLeast = 1)
        String name,

        @Field(meaning = "The figure", least = 0) double value,

        @Field(meaning = "Its unit: A, V, %, s, W, BTU/h; empty where there is none", byDefault = "\"\"")
        String unit,

        @Field(meaning = "How it comes about, or what was assumed", atLeast = 1, optional = true)
        Optional<String> how)
        implements QuantityBuilder.With {
    public Quantity {
        Contract.check(Quantity.class, place, name, value, unit, how);
    }

    /** One whose name says how it comes about. */
    public Quantity(String place, String name, double value, String unit) {
        this(place, name, value, unit, Optional.empty());
    }

    /** Begins with what a file gives that leaves everything out. */
    public static QuantityBuilder builder() {
        return Defaults.into(QuantityBuilder.unset(), Quantity.class);
    }
}
