package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;

/** Loads of one kind of which nobody knows yet how many there are; as many as are listed are likely. */
@FileRecord
public record QuantityRange(
        @Field(meaning = "What they are, as it is printed", atLeast = 1)
        String name,

        @Field(meaning = "Loads of the project that stand for them, alike", atLeast = 1, distinct = true)
        List<String> loads,

        @Field(meaning = "Fewest there may be", min = 0, max = 10_000)
        int low,

        @Field(meaning = "Most there may be", min = 1, max = 10_000)
        int high)
        implements QuantityRangeBuilder.With {
    public QuantityRange {
        Contract.check(QuantityRange.class, name, loads, low, high);
        loads = List.copyOf(loads);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static QuantityRangeBuilder builder() {
        return Defaults.into(QuantityRangeBuilder.unset(), QuantityRange.class);
    }

    /** How many the project has. */
    public int likely() {
        return loads.size();
    }
}
