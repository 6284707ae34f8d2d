package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;

/** What each figure of a plan costs, in ampere-equivalents. */
@FileRecord
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
        double boards,

        @Field(
                meaning = "Per ampere of the phase deviations of nodes that are neither sources nor panels, summed",
                min = 0,
                max = 1e6,
                byDefault = "0")
        double nodeImbalance,

        @Field(
                meaning = "Per breaker, lead or setting that differs from an earlier plan",
                min = 0,
                max = 1e6,
                byDefault = "0")
        double move,

        @Field(meaning = "Per panel beyond the first that a rack is spread over", min = 0, max = 1e6, byDefault = "0")
        double rackPanels,

        @Field(meaning = "Per board beyond the first that a rack is spread over", min = 0, max = 1e6, byDefault = "0")
        double rackBoards,

        @Field(
                meaning = "Per row of a panel between a rack's loads that none of them takes",
                min = 0,
                max = 1e6,
                byDefault = "0")
        double rackRows)
        implements ObjectiveWeightsBuilder.With {

    /** The weights that hold where a project states none. */
    public static final ObjectiveWeights DEFAULT = builder().build();

    public ObjectiveWeights {
        Contract.check(
                ObjectiveWeights.class,
                peakInrush,
                supplyImbalance,
                panelImbalance,
                duration,
                boards,
                nodeImbalance,
                move,
                rackPanels,
                rackBoards,
                rackRows);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static ObjectiveWeightsBuilder builder() {
        return Defaults.into(ObjectiveWeightsBuilder.unset(), ObjectiveWeights.class);
    }
}
