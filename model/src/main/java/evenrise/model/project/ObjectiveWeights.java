package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;

/** What each figure of a plan costs, in ampere-equivalents. */
public record ObjectiveWeights(
        @Field(meaning = "Per ampere of the supply's peak inrush", min = 0, max = 1e6, byDefault = "1")
        double peakInrush,

        @Field(meaning = "Per ampere of the supply's phase deviation", min = 0, max = 1e6, byDefault = "1")
        double supplyImbalance,

        @Field(meaning = "Per ampere of the panels' phase deviations, summed", min = 0, max = 1e6, byDefault = "1")
        double panelImbalance,

        @Field(meaning = "Per second of the sequence", min = 0, max = 1e6, byDefault = "0.1")
        double duration,

        @Field(meaning = "Per board in use", min = 0, max = 1e6, byDefault = "0")
        double boards) {

    /** The weights that hold where a project states none. */
    public static final ObjectiveWeights DEFAULT = new ObjectiveWeights(1, 1, 1, 0.1, 0);

    public ObjectiveWeights {
        Contract.check(ObjectiveWeights.class, peakInrush, supplyImbalance, panelImbalance, duration, boards);
    }
}
