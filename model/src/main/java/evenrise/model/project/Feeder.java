package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.Optional;
import java.util.OptionalDouble;

/** What connects a panel to the supply. */
@FileRecord
public record Feeder(
        @Field(meaning = "Cable between supply and panel", optional = true)
        Optional<Cable> cable,

        @Field(
                meaning = "Rating of the device that protects it; the panel's rated_a when absent",
                above = 0,
                max = 6300,
                optional = true)
        OptionalDouble breakerAmps,

        @Field(meaning = "Whether that device may carry its whole rating continuously", byDefault = "false")
        boolean fullyRated,

        @Field(
                meaning = "Rated residual current of a residual-current device that protects it: 0.03 for 30 mA; none"
                        + " when absent",
                above = 0,
                max = 30,
                optional = true)
        OptionalDouble residualCurrentAmps,

        @Field(meaning = "What is known of that device's trip", optional = true)
        Optional<Device> device,

        @Field(
                meaning = "Where it taps the feeder of what `fed_from` names, with no device of its own where it"
                        + " begins; the device that it ends in is `main`",
                optional = true)
        Optional<FeederTap> tap)
        implements FeederBuilder.With {
    public Feeder {
        Contract.check(Feeder.class, cable, breakerAmps, fullyRated, residualCurrentAmps, device, tap);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static FeederBuilder builder() {
        return Defaults.into(FeederBuilder.unset(), Feeder.class);
    }
}
