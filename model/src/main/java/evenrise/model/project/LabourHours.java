package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.OptionalDouble;

/** Work by hours and their rate, in the place of work by a price of its own. */
@FileRecord
public record LabourHours(
        @Field(meaning = "Price of an hour by day, in the catalogue's currency", above = 0)
        double rate,

        @Field(meaning = "Price of an hour at night", above = 0, optional = true)
        OptionalDouble nightRate,

        @Field(meaning = "Part of all hours that is worked at night", min = 0, max = 100, byDefault = "0")
        double nightPercent,

        @Field(meaning = "Hours for one breaker and its cable, for each pole", min = 0, optional = true)
        OptionalDouble perPole,

        @Field(meaning = "Hours for the control lead of one switched breaker", min = 0, optional = true)
        OptionalDouble perLead,

        @Field(meaning = "Hours more for a lead whose board is in another panel", min = 0, optional = true)
        OptionalDouble perLeadBetweenPanels,

        @Field(meaning = "Hours for one board", min = 0, optional = true)
        OptionalDouble perBoard,

        @Field(meaning = "Hours for one panel", min = 0, optional = true)
        OptionalDouble perPanel,

        @Field(meaning = "Hours for one node, transformers and sources among them", min = 0, optional = true)
        OptionalDouble perNode,

        @Field(meaning = "Hours for one contactor", min = 0, optional = true)
        OptionalDouble perContactor)
        implements LabourHoursBuilder.With {
    public LabourHours {
        Contract.check(
                LabourHours.class,
                rate,
                nightRate,
                nightPercent,
                perPole,
                perLead,
                perLeadBetweenPanels,
                perBoard,
                perPanel,
                perNode,
                perContactor);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static LabourHoursBuilder builder() {
        return Defaults.into(LabourHoursBuilder.unset(), LabourHours.class);
    }
}
