package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A transformer with two windings a phase: how it joins two systems, and what the electrical review needs of it. */
@FileRecord
public record Transformer(
        @Field(
                meaning = "How primary and secondary are connected; single feeds split-phase or single-phase from one"
                        + " or two primary phases, the others have three on both sides")
        TransformerConnection connection,

        @Field(
                meaning =
                        "Primary phases of a single one, one or two; the first two of what feeds it when absent, or its"
                                + " one",
                distinct = true,
                optional = true)
        List<Phase> primaryPhases,

        @Field(
                meaning = "By how much a delta-wye's secondary leads its primary: 30 or -30",
                min = -30,
                max = 30,
                byDefault = "30")
        int shiftDegrees,

        @Field(meaning = "What it feeds") Secondary secondary,

        @Field(meaning = "Rated power, for the electrical review", above = 0, max = 100_000, optional = true)
        OptionalDouble ratedKva,

        @Field(
                meaning = "Impedance voltage over rated voltage, for the electrical review",
                above = 0,
                max = 100,
                optional = true)
        OptionalDouble impedancePercent,

        @Field(
                meaning = "Its reactance over its resistance, for the electrical review",
                min = 0,
                max = 1000,
                optional = true)
        OptionalDouble xOverR,

        @Field(
                meaning = "Instantaneous primary peak when it is energised, for the electrical review and events",
                above = 0,
                max = 1_000_000,
                optional = true)
        OptionalDouble inrushPeakAmps,

        @Field(
                meaning = "Time in which that inrush halves, for the electrical review and events",
                above = 0,
                max = 600_000,
                optional = true)
        OptionalDouble inrushHalfMillis,

        @Field(
                meaning = "K-factor that it is built for, for the electrical review",
                min = 1,
                max = 100,
                optional = true)
        OptionalDouble kFactor,

        @Field(
                meaning = "Conductors from its secondary to the first device behind it, for the electrical review",
                optional = true)
        Optional<Cable> secondaryCable)
        implements TransformerBuilder.With {
    public Transformer {
        Contract.check(
                Transformer.class,
                connection,
                primaryPhases,
                shiftDegrees,
                secondary,
                ratedKva,
                impedancePercent,
                xOverR,
                inrushPeakAmps,
                inrushHalfMillis,
                kFactor,
                secondaryCable);
        primaryPhases = List.copyOf(primaryPhases);
    }

    /**
     * What is left of its inrush some time after it was energised; 0 where it states none. One that does not state how long
     * it lasts is taken to last.
     */
    public double energisingAmps(double afterSeconds) {
        double left = inrushHalfMillis.isPresent()
                ? Math.pow(2, -Math.max(0, afterSeconds) * 1000 / inrushHalfMillis.getAsDouble())
                : 1;
        return inrushPeakAmps.orElse(0) * left;
    }

    /** Begins with what a file gives that leaves everything out. */
    public static TransformerBuilder builder() {
        return Defaults.into(TransformerBuilder.unset(), Transformer.class);
    }
}
