package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;

/** What any plan of the project that keeps every hard rule has at least; the proofs are in docs/bounds.md. */
@FileRecord
public record Bounds(
        @Field(meaning = "The objective, in ampere-equivalents", min = 0, least = 0)
        double objective,

        @Field(meaning = "The peak on the supply's worst phase", min = 0, least = 0)
        double peakInrushAmps,

        @Field(meaning = "Largest deviation of a phase from the mean at the supply", min = 0, least = 0)
        double supplyDeviationAmps,

        @Field(meaning = "The same of every panel, summed", min = 0, least = 0)
        double panelDeviationsAmps,

        @Field(meaning = "Last switch-on", min = 0, least = 0)
        double durationSeconds)
        implements BoundsBuilder.With {
    public Bounds {
        Contract.check(
                Bounds.class, objective, peakInrushAmps, supplyDeviationAmps, panelDeviationsAmps, durationSeconds);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static BoundsBuilder builder() {
        return Defaults.into(BoundsBuilder.unset(), Bounds.class);
    }
}
