package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import evenrise.model.project.Phase;
import evenrise.model.project.PlanEvent;
import java.util.Optional;

/**
 * Greatest instantaneous current of one node when something happens while the show runs, by the envelopes at nominal
 * voltage.
 */
@FileRecord
public record EventPeak(
        @Field(meaning = "What happens") PlanEvent event,

        @Field(
                meaning =
                        "Instantaneous peak of the worst phase by the envelopes at nominal voltage, an upper bound for"
                                + " sines where every load states its inrush_peak_a (see peak_basis), with the show"
                                + " running: what is on draws the greater of running_a and idle_a, what comes on its"
                                + " inrush over idle_a",
                least = 0)
        double peakInrushAmps,

        @Field(meaning = "Phase of that peak") Phase peakPhase,

        @Field(meaning = "The board whose failure makes it, where one does", optional = true)
        Optional<String> board)
        implements EventPeakBuilder.With {
    public EventPeak {
        Contract.check(EventPeak.class, event, peakInrushAmps, peakPhase, board);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static EventPeakBuilder builder() {
        return Defaults.into(EventPeakBuilder.unset(), EventPeak.class);
    }
}
