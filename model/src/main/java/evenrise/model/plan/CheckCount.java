package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;

/** At how many places one electrical check had what it needs. */
@FileRecord
public record CheckCount(
        @Field(meaning = "The check, as named in docs/electrical.md", atLeast = 1)
        String check,

        @Field(meaning = "Places (loads, panels, the supply) at which it was made", min = 0)
        int made,

        @Field(meaning = "Places at which it was not, for something is not stated or not known", min = 0)
        int notMade)
        implements CheckCountBuilder.With {
    public CheckCount {
        Contract.check(CheckCount.class, check, made, notMade);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static CheckCountBuilder builder() {
        return Defaults.into(CheckCountBuilder.unset(), CheckCount.class);
    }
}
