package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.OptionalDouble;

/** The amplifiers behind one breaker, summed. */
@FileRecord
public record Amplifier(
        @Field(meaning = "Rated output of all channels into the loads that are connected", above = 0, max = 1_000_000)
        double ratedOutputWatts,

        @Field(meaning = "Kind of output stage", byDefault = "\"switching\"")
        OutputStage outputStage,

        @Field(meaning = "Drawn from the mains when on and silent", min = 0, max = 1_000_000)
        double idleWatts,

        @Field(meaning = "Efficiency of a switching output stage", above = 0, max = 100, byDefault = "85")
        double efficiencyPercent,

        @Field(
                meaning = "Drawn from the mains at 1/8 of rated output, by the datasheet",
                above = 0,
                max = 1_000_000,
                optional = true)
        OptionalDouble eighthPowerWatts,

        @Field(
                meaning = "Drawn from the mains at 1/3 of rated output, by the datasheet",
                above = 0,
                max = 1_000_000,
                optional = true)
        OptionalDouble thirdPowerWatts,

        @Field(meaning = "How hard it is driven on average", byDefault = "\"eighth\"")
        Programme programme)
        implements AmplifierBuilder.With {
    public Amplifier {
        Contract.check(
                Amplifier.class,
                ratedOutputWatts,
                outputStage,
                idleWatts,
                efficiencyPercent,
                eighthPowerWatts,
                thirdPowerWatts,
                programme);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static AmplifierBuilder builder() {
        return Defaults.into(AmplifierBuilder.unset(), Amplifier.class);
    }
}
