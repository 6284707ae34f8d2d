package evenrise.model.plan;

import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import evenrise.model.project.Phase;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** The figures of a plan; each is defined in docs/model.md. */
@FileRecord
public record Metrics(
        @Field(
                meaning = "Instantaneous peak of the supply's worst phase by the envelopes at nominal voltage, idle"
                        + " currents as sines; an upper bound there where every switched load states its"
                        + " inrush_peak_a, see peak_basis",
                least = 0)
        double peakInrushAmps,

        @Field(meaning = "Phase of that peak") Phase peakPhase,

        @Field(meaning = "Nominal switch-on time that makes that peak", least = 0)
        double peakAtSeconds,

        @Field(meaning = "Largest deviation of a phase current from the mean at the supply, over the mean", least = 0)
        double supplyImbalancePercent,

        @Field(meaning = "The same, of the worst panel", least = 0)
        double worstPanelImbalancePercent,

        @Field(meaning = "Rms current in the supply's neutral", least = 0)
        double supplyNeutralAmps,

        @Field(meaning = "Last switch-on", least = 0) double durationSeconds,

        @Field(meaning = "Boards that switch at least one load")
        int boardsUsed,

        @Field(meaning = "Hard rules broken, each place counted")
        int hardViolations,

        @Field(meaning = "What is minimised, in ampere-equivalents", least = 0)
        double objective,

        @Field(
                meaning = "Peaks of further sources, summed, each the greatest over its phases; where there are any",
                optional = true,
                least = 0)
        OptionalDouble sourcePeaksAmps,

        @Field(
                meaning = "Largest imbalance of a node that is neither a source nor a panel; where there are any",
                optional = true,
                least = 0)
        OptionalDouble worstNodeImbalancePercent,

        @Field(
                meaning = "Panels that racks are spread over beyond the first of each; where any load names a rack",
                optional = true)
        OptionalInt rackPanels,

        @Field(
                meaning = "Boards that racks are spread over beyond the first of each; where any load names a rack",
                optional = true)
        OptionalInt rackBoards,

        @Field(
                meaning = "Rows of panels between a rack's loads that none of them takes; where any load names a rack",
                optional = true)
        OptionalInt rackRows,

        @Field(
                meaning = "Breakers that sit elsewhere than in an earlier plan; where it was judged against one",
                optional = true)
        OptionalInt movedBreakers,

        @Field(
                meaning = "Loads on another output than in an earlier plan; where it was judged against one",
                optional = true)
        OptionalInt movedLeads,

        @Field(
                meaning = "Boards and outputs set otherwise than in an earlier plan; where it was judged against one",
                optional = true)
        OptionalInt movedSettings)
        implements MetricsBuilder.With {

    /** Begins with what a file gives that leaves everything out. */
    public static MetricsBuilder builder() {
        return Defaults.into(MetricsBuilder.unset(), Metrics.class);
    }
}
