package evenrise.solver.app;

import evenrise.model.measured.MeasuredPlant;
import evenrise.solver.report.MeasuredPlantText;
import evenrise.solver.report.RenewalGain;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A plant as measured beside its plan.
 *
 * @since 0.1.0
 */
public final class CommissionResult implements Listing {
    private final MeasuredPlant plant;
    private final RenewalGain gain;
    private final Optional<RecordedPlant> recorded;
    private final List<String> notes;
    private final List<String> written;

    CommissionResult(
            MeasuredPlant plant,
            RenewalGain gain,
            Optional<RecordedPlant> recorded,
            List<String> notes,
            List<String> written) {
        this.plant = plant;
        this.gain = gain;
        this.recorded = recorded;
        this.notes = List.copyOf(notes);
        this.written = List.copyOf(written);
    }

    /** What was found. */
    public MeasuredPlant plant() {
        return plant;
    }

    /** What a recorded start says; empty where there is none. */
    public Optional<RecordedPlant> recorded() {
        return recorded;
    }

    /** What was taken in a way that somebody should know of. */
    public List<String> notes() {
        return notes;
    }

    /** The peak that no plan stays below, with what was measured. */
    public OptionalDouble leastPeakAmps() {
        return gain.leastPeakAmps();
    }

    /** Names of the files of the record; none where none was asked for. */
    public List<String> written() {
        return written;
    }

    @Override
    public List<String> text(TextStyle style) {
        return MeasuredPlantText.lines(plant, gain, notes, style.isFull(), style.paint());
    }
}
