package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;

/** What any plan of the project that keeps every hard rule has at least; the proofs are in docs/bounds.md. */
public record Bounds(
        @Field(meaning = "The objective, in ampere-equivalents", min = 0)
        double objective,

        @Field(meaning = "The peak on the supply's worst phase", min = 0)
        double peakInrushAmps,

        @Field(meaning = "Largest deviation of a phase from the mean at the supply", min = 0)
        double supplyDeviationAmps,

        @Field(meaning = "The same of every panel, summed", min = 0)
        double panelDeviationsAmps,

        @Field(meaning = "Last switch-on", min = 0) double durationSeconds) {
    public Bounds {
        Contract.check(
                Bounds.class, objective, peakInrushAmps, supplyDeviationAmps, panelDeviationsAmps, durationSeconds);
    }
}
