package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;
import java.util.OptionalInt;

/** Loads of one kind of which nobody knows yet how many there are. */
@FileRecord
public record QuantityRange(
        @Field(meaning = "What they are, as it is printed", atLeast = 1)
        String name,

        @Field(meaning = "Loads of the project that stand for them, alike", atLeast = 1, distinct = true)
        List<String> loads,

        @Field(meaning = "Fewest there may be", min = 0, max = 10_000)
        int low,

        @Field(meaning = "Most there may be", min = 1, max = 10_000)
        int high,

        @Field(
                meaning = "Number that is likely; as many as are listed when absent",
                min = 0,
                max = 10_000,
                optional = true)
        OptionalInt likely,

        @Field(
                meaning =
                        "Whether anybody has said how many; else those listed stand for an unknown number, and low and"
                                + " high are theirs",
                byDefault = "true")
        boolean stated)
        implements QuantityRangeBuilder.With {
    public QuantityRange {
        Contract.check(QuantityRange.class, name, loads, low, high, likely, stated);
        loads = List.copyOf(loads);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static QuantityRangeBuilder builder() {
        return Defaults.into(QuantityRangeBuilder.unset(), QuantityRange.class);
    }

    /** How many the project has. */
    public int listed() {
        return loads.size();
    }

    /** The number that is likely, as far as anybody has said. */
    public int tip() {
        return likely.orElse(listed());
    }
}
