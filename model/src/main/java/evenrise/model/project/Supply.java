package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.Optional;
import java.util.OptionalDouble;

/** What feeds every panel. */
@FileRecord
public record Supply(
        @Field(
                meaning = "System of line conductors. Three-phase is a star of four wires with an earthed neutral; "
                        + "high-leg, open and corner-grounded delta and IT systems are not planned")
        PhaseSystem system,

        @Field(meaning = "Nominal rms voltage between a line conductor and neutral", above = 0, max = 1000)
        double lineToNeutralVolts,

        @Field(meaning = "Nominal frequency", min = 1, max = 400)
        double frequencyHertz,

        @Field(meaning = "Rated rms current of each line conductor", above = 0, max = 100_000)
        double ratedAmps,

        @Field(
                meaning =
                        "Part of a rating that continuous running current may use, here and in every panel that states"
                                + " none",
                above = 0,
                max = 1,
                byDefault = "0.8")
        double continuousFraction,

        @Field(meaning = "Capacity of the neutral over that of a line conductor", above = 0, max = 4, byDefault = "1")
        double neutralFactor,

        @Field(
                meaning = "Greatest allowed instantaneous peak on any phase; the hard rule holds it at nominal voltage",
                above = 0,
                optional = true)
        OptionalDouble inrushLimitAmps,

        @Field(
                meaning = "Voltages that it may have for as long as anybody likes, where the loads are; where absent,"
                        + " those of the practice are assumed",
                optional = true)
        Optional<VoltageRange> voltageRange,

        @Field(meaning = "Its main device", optional = true) Optional<Device> main,

        @Field(
                meaning = "What the service or feeder that it is on carries already, where that feeds more than this"
                        + " plant, for the electrical review",
                optional = true)
        Optional<ExistingDemand> existingDemand)
        implements SupplyBuilder.With {
    public Supply {
        Contract.check(
                Supply.class,
                system,
                lineToNeutralVolts,
                frequencyHertz,
                ratedAmps,
                continuousFraction,
                neutralFactor,
                inrushLimitAmps,
                voltageRange,
                main,
                existingDemand);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static SupplyBuilder builder() {
        return Defaults.into(SupplyBuilder.unset(), Supply.class);
    }

    /** Greatest rms current that each line conductor may run at. */
    public double continuousAmps() {
        return ratedAmps * continuousFraction;
    }

    /** Greatest rms current that the neutral may carry. */
    public double neutralAmps() {
        return ratedAmps * neutralFactor;
    }
}
