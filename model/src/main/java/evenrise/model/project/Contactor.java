package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.OptionalDouble;

/** A contactor that switches a load, and those that come with it; one pole for each phase. */
@FileRecord
public record Contactor(
        @Field(meaning = "Utilisation category that its rating is for")
        ContactorCategory category,

        @Field(meaning = "Rated operational rms current of a pole in that category", above = 0, max = 10_000)
        double ratedAmps,

        @Field(
                meaning = "Greatest instantaneous peak that a pole may close onto, by its maker; when absent the making"
                        + " capacity of the category",
                above = 0,
                max = 1_000_000,
                optional = true)
        OptionalDouble makingPeakAmps)
        implements ContactorBuilder.With {
    public Contactor {
        Contract.check(Contactor.class, category, ratedAmps, makingPeakAmps);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static ContactorBuilder builder() {
        return Defaults.into(ContactorBuilder.unset(), Contactor.class);
    }
}
