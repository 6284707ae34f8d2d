package evenrise.solver.app;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Phrase;
import evenrise.model.intake.RecorderColumns;
import evenrise.model.measured.Discrepancy;
import evenrise.model.measured.RecordedDiscrepancies;
import evenrise.model.observation.Observation;
import evenrise.model.observation.ObservedStart.Finding;
import evenrise.model.observation.Observer;
import evenrise.model.observation.PlannedCurrent;
import evenrise.model.observation.Recording;
import evenrise.model.observation.StartSpan;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Layout;
import evenrise.solver.recording.RecordingCsv;
import evenrise.solver.rendering.OverlaidCurves;
import evenrise.solver.report.FurtherReadingsText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A recorded start beside what was planned, for a report.
 *
 * @param file the recording's name
 * @param place what was recorded, in words
 * @param columns how each column was read
 * @param seen what it says of each start
 * @param planned what a clamp was planned to read
 * @param recording what it read
 * @param notes what it says in short, and what it leaves open
 * @since 0.1.0
 */
public record RecordedPlant(
        String file,
        String place,
        List<String> columns,
        Observation seen,
        PlannedCurrent planned,
        Recording recording,
        List<String> notes) {
    private static final double BEFORE_SECONDS = -2;
    private static final int MOST_NAMED = 12;

    public RecordedPlant {
        columns = List.copyOf(columns);
        notes = List.copyOf(notes);
    }

    /** @param said which columns of tables are what */
    static RecordedPlant of(Layout layout, CommissionRequest.Recorded asked, List<RecorderColumns> said) {
        Distribution.Point point = ObserveJob.point(layout.distribution(), asked.at());
        Optional<String> system = ObserveJob.system(layout.project(), asked.system());
        RecordingCsv.Read read =
                ObserveJob.read(asked.file(), said, layout.project(), Optional.empty(), Optional.empty());
        Recording recording;
        Observation seen;
        try {
            recording =
                    StartSpan.of(layout, point.index(), system, read.recording().orElseThrow());
            seen = Observer.of(layout, point.index(), system, recording);
        } catch (IllegalArgumentException e) {
            throw new JobFailed(JobFailed.Reason.REQUEST, e.getMessage());
        }
        String file = asked.file().getFileName().toString();
        return new RecordedPlant(
                file,
                point.label(),
                read.columns(),
                seen,
                PlannedCurrent.of(layout, point.index(), system, BEFORE_SECONDS),
                recording,
                notes(seen, file));
    }

    private static List<String> notes(Observation seen, String file) {
        List<String> notes = new ArrayList<>();
        if (!seen.isRecognised()) {
            return List.of("The recording " + Phrase.quoted(file)
                    + " is not recognised as the start of this plan, and says nothing here.");
        }
        notes.add("The recording " + Phrase.quoted(file) + " shows "
                + Phrase.counted(seen.starts().size(), "start")
                + ": " + seen.count(Finding.AS_PLANNED) + " as planned, " + seen.count(Finding.CANNOT_TELL)
                + " that cannot be told, " + seen.count(Finding.TOO_SMALL)
                + " too small to be seen; its clock runs "
                + Decimals.fixed(1e6 * (seen.clock().rate() - 1), 0) + " millionths fast.");
        notes.addAll(FurtherReadingsText.lines(seen.further(), MOST_NAMED));
        return notes;
    }

    List<Discrepancy> discrepancies(Optional<String> day) {
        return RecordedDiscrepancies.of(seen, file, day);
    }

    OverlaidCurves curves() {
        return OverlaidCurves.of(place, planned, recording, seen.clock());
    }
}
