package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.OptionalDouble;

/** What stands behind the supply, seen from the supply's own terminals. */
@FileRecord
public record SupplySource(
        @Field(meaning = "What it is") SourceKind kind,

        @Field(meaning = "Rated apparent power; of all but a utility", above = 0, max = 1_000_000, optional = true)
        OptionalDouble ratedKva,

        @Field(
                meaning =
                        "Rms fault current of three phases (of two lines on split-phase): a utility's own, or that of "
                                + "the network before a transformer at the supply's voltage",
                above = 0,
                max = 1_000_000,
                optional = true)
        OptionalDouble faultAmps,

        @Field(meaning = "Impedance voltage of a transformer", above = 0, max = 100, optional = true)
        OptionalDouble impedancePercent,

        @Field(
                meaning =
                        "Reactance over resistance; when absent 3 of a transformer, 5 of a utility, 20 of a generator",
                above = 0,
                max = 1000,
                optional = true)
        OptionalDouble xOverR,

        @Field(meaning = "Subtransient reactance X''d of a generator", above = 0, max = 100, optional = true)
        OptionalDouble subtransientReactancePercent,

        @Field(meaning = "Transient reactance X'd of a generator", above = 0, max = 100, optional = true)
        OptionalDouble transientReactancePercent,

        @Field(
                meaning = "Crest current at which a UPS limits, of the crest of its rated current",
                above = 0,
                max = 1000,
                optional = true)
        OptionalDouble currentLimitPercent,

        @Field(
                meaning = "Impedance of a fault between a line and the protective conductor at the supply's terminals,"
                        + " as measured or by who supplies; of a transformer or generator computed when absent",
                above = 0,
                max = 1000,
                optional = true)
        OptionalDouble faultLoopOhms,

        @Field(
                meaning = "Negative-sequence current that a generator bears continuously by its maker, of its rated"
                        + " current; when absent 8, and at most 10",
                above = 0,
                max = 100,
                optional = true)
        OptionalDouble negativeSequencePercent)
        implements SupplySourceBuilder.With {
    public SupplySource {
        Contract.check(
                SupplySource.class,
                kind,
                ratedKva,
                faultAmps,
                impedancePercent,
                xOverR,
                subtransientReactancePercent,
                transientReactancePercent,
                currentLimitPercent,
                faultLoopOhms,
                negativeSequencePercent);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static SupplySourceBuilder builder() {
        return Defaults.into(SupplySourceBuilder.unset(), SupplySource.class);
    }
}
