package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.Optional;
import java.util.OptionalDouble;

/** Breaker and wiring of one load. A breaker of several poles is one device with a common trip. */
@FileRecord
public record Circuit(
        @Field(meaning = "Cable between breaker and load", optional = true)
        Optional<Cable> cable,

        @Field(meaning = "Whether the load runs for three hours or more", byDefault = "true")
        boolean continuous,

        @Field(meaning = "Whether the breaker may carry its whole rating continuously", byDefault = "false")
        boolean fullyRated,

        @Field(
                meaning =
                        "Setting of an adjustable instantaneous trip, over the rating; it goes before the load's curve",
                above = 0,
                max = 50,
                optional = true)
        OptionalDouble instantaneousRatio,

        @Field(meaning = "Equal devices behind the breaker", min = 1, max = 1000, byDefault = "1")
        int devices,

        @Field(
                meaning = "Rated residual current of a residual-current device that protects it: 0.03 for 30 mA; none"
                        + " when absent",
                above = 0,
                max = 30,
                optional = true)
        OptionalDouble residualCurrentAmps,

        @Field(
                meaning = "Range of its instantaneous trip by its maker; it goes before setting and curve",
                optional = true)
        Optional<InstantaneousRange> instantaneous)
        implements CircuitBuilder.With {
    public Circuit {
        Contract.check(
                Circuit.class,
                cable,
                continuous,
                fullyRated,
                instantaneousRatio,
                devices,
                residualCurrentAmps,
                instantaneous);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static CircuitBuilder builder() {
        return Defaults.into(CircuitBuilder.unset(), Circuit.class);
    }
}
