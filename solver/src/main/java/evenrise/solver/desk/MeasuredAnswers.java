package evenrise.solver.desk;

import evenrise.model.measured.Discrepancy;
import evenrise.model.measured.FieldChange;
import evenrise.model.measured.SiteVerdict;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What windows are told of a plant as measured. */
public final class MeasuredAnswers {
    private MeasuredAnswers() {}

    /** @param kind sheet, recording, or part of a recording */
    public record SiteFileView(String name, String kind, long bytes) {}

    public record SiteFilesView(List<SiteFileView> files) {}

    /** @param means time, or a phase; empty where it is not read */
    public record RecordedColumnView(String header, String example, String means) {}

    /** @param isTold whether time and currents are known */
    public record RecordedColumnsView(boolean isTold, List<RecordedColumnView> columns) {}

    /**
     * What was handed over, and what it says.
     *
     * @param state empty, open, or taken into the project
     * @param places supply, panels and nodes that may have been recorded
     * @param problems why nothing is said
     */
    public record MeasuredView(
            long revision,
            String state,
            List<SiteFileView> files,
            Optional<RecordedColumnsView> columns,
            List<String> places,
            List<String> systems,
            String at,
            String system,
            String day,
            String use,
            List<String> problems,
            Optional<FoundView> found) {}

    /**
     * A plant as measured beside its plan.
     *
     * @param leastPeakAmps what no plan stays below, with what was measured
     * @param broken rules on currents that what was measured breaks
     */
    public record FoundView(
            SiteVerdict verdict,
            String words,
            String meaning,
            String counts,
            String coverage,
            List<DifferenceView> differences,
            Optional<RecordedView> recorded,
            List<ChangeView> changes,
            String taken,
            List<String> broken,
            String limits,
            double plannedPeakAmps,
            double measuredPeakAmps,
            OptionalDouble leastPeakAmps,
            List<String> missing,
            List<String> notes) {}

    /**
     * @param within how far meter and model may be off
     * @param surePercent of a recorded start, that it is so and not otherwise
     */
    public record DifferenceView(
            Discrepancy.Weight weight,
            String word,
            String subject,
            String quantity,
            String planned,
            String measured,
            String within,
            OptionalDouble surePercent,
            String cause,
            String lookAt,
            String date,
            String meter,
            String at) {}

    /**
     * A recorded start over what a clamp was planned to read.
     *
     * @param columns how each column was read
     * @param width of the picture of a lane, as its height
     * @param open starts that cannot be told, or are too small to be seen
     */
    public record RecordedView(
            String file,
            String place,
            boolean isRecognised,
            List<String> columns,
            int width,
            int height,
            List<LaneView> lanes,
            List<TickView> ticks,
            List<OpenStartView> open,
            List<String> notes) {}

    /**
     * @param planned path of the stair
     * @param recorded path of the recording; empty where the phase was not recorded
     * @param topAmps current at the upper edge
     */
    public record LaneView(String phase, String planned, String recorded, String topAmps) {}

    public record TickView(String label, String at) {}

    /** @param likeliest what explains it best, without being sure enough */
    public record OpenStartView(String loads, double atSeconds, String finding, String likeliest, double surePercent) {}

    /**
     * What a reading says of one field.
     *
     * @param asksFullUse whether it would lower the field where somebody confirmed full use
     * @param isConfirmed whether somebody has
     */
    public record ChangeView(
            FieldChange.Kind kind,
            String load,
            String field,
            double beforeAmps,
            double afterAmps,
            boolean wasGuessed,
            double measuredAmps,
            double spreadAmps,
            String date,
            String meter,
            boolean asksFullUse,
            boolean isConfirmed,
            String why) {}

    /** @param files as they were written */
    public record AsBuiltView(String folder, List<String> files) {}
}
