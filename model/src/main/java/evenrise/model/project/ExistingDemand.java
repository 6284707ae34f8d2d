package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;
import java.util.OptionalDouble;

/** What a service or feeder carries that feeds more than this plant, as recorded, at the supply's voltage. */
@FileRecord
public record ExistingDemand(
        @Field(
                meaning = "Greatest demand on its highest loaded phase, over fifteen minutes on the average",
                above = 0,
                max = 100_000)
        double maxAmps,

        @Field(meaning = "What it was recorded over: a year, or thirty days at fifteen minutes")
        DemandBasis basis,

        @Field(
                meaning = "Loads of this project that ran while it was recorded, as they do now, and so are in it",
                distinct = true,
                byDefault = "[]")
        List<String> recordedLoads,

        @Field(
                meaning = "Ampacity of the feeder or rating of the service; rated_a of the supply when absent",
                above = 0,
                max = 100_000,
                optional = true)
        OptionalDouble ampacityAmps,

        @Field(
                meaning = "Whether it has renewable sources, or its peaks are shaved, so that the recording says less",
                byDefault = "false")
        boolean offset)
        implements ExistingDemandBuilder.With {
    public ExistingDemand {
        Contract.check(ExistingDemand.class, maxAmps, basis, recordedLoads, ampacityAmps, offset);
        recordedLoads = List.copyOf(recordedLoads);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static ExistingDemandBuilder builder() {
        return Defaults.into(ExistingDemandBuilder.unset(), ExistingDemand.class);
    }
}
