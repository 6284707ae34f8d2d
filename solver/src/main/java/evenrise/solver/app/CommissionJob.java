package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.contract.Phrase;
import evenrise.model.file.Format;
import evenrise.model.file.ProjectFile;
import evenrise.model.intake.RecorderColumns;
import evenrise.model.measured.MeasuredPlant;
import evenrise.model.measured.SiteReadings;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.commissioning.FilledSheets;
import evenrise.solver.commissioning.ReadSheets;
import evenrise.solver.report.RenewalGain;
import evenrise.solver.table.ReadTable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/** Filled sheets beside a plan. */
final class CommissionJob {
    private static final int MOST_PROBLEMS = 200;

    private final CommissionRequest request;
    private final Watch watch;

    CommissionJob(CommissionRequest request, Watch watch) {
        this.request = request;
        this.watch = watch;
    }

    CommissionResult run() {
        if (request.sheets().isEmpty() && request.recording().isEmpty()) {
            throw new JobFailed(JobFailed.Reason.REQUEST, "give filled sheets, or a recorded start with --recording.");
        }
        List<Source> inputs = new ArrayList<>(List.of(request.project(), request.plan()));
        request.sheets().forEach(each -> inputs.add(Source.file(each)));
        request.recording().ifPresent(each -> inputs.add(Source.file(each.file())));
        request.into().ifPresent(path -> Outputs.refuseInputs(path, inputs));
        Optional<AsBuiltRecord> record = request.record().map(each -> new AsBuiltRecord(each, inputs, watch.notes()));
        record.ifPresent(AsBuiltRecord::refuseWhatIsNotOurs);
        AuditJob.Subject subject = AuditJob.Subject.of(request.project(), request.plan(), watch.notes());
        refuseUnknown(subject.project());
        refuseNames(subject.project());
        ReadSheets read = read(subject);
        Optional<RecordedPlant> recorded =
                request.recording().map(each -> RecordedPlant.of(subject.layout(), each, said(each)));
        watch.at(Stage.JUDGING);
        MeasuredPlant plant = MeasuredPlant.of(
                subject.layout(),
                read.readings(),
                recorded.map(each -> each.discrepancies(request.day())).orElse(List.of()),
                this::isConfirmed,
                request.use());
        watch.at(Stage.BOUNDS);
        RenewalGain gain = RenewalGain.of(
                plant,
                OptionalDouble.of(ProvenBounds.of(plant.refitted().project()).peakInrushAmps()));
        watch.at(Stage.WRITING);
        request.into()
                .ifPresent(path -> Outputs.write(() -> ProjectFile.write(
                        plant.refitted().project(), subject.read().notes(), path, Format.ofName(path.toString()))));
        List<String> notes = new ArrayList<>(read.notes());
        recorded.ifPresent(each -> notes.addAll(each.notes()));
        List<String> files = new ArrayList<>(request.sheets().stream()
                .map(each -> each.getFileName().toString())
                .toList());
        request.recording()
                .ifPresent(each -> files.add(each.file().getFileName().toString()));
        List<String> written = record.map(
                        each -> each.write(subject, plant, gain, read.readings().dates(), files, recorded, notes))
                .orElse(List.of());
        return new CommissionResult(plant, gain, recorded, notes, written);
    }

    private List<RecorderColumns> said(CommissionRequest.Recorded recorded) {
        List<RecorderColumns> said = new ArrayList<>(recorded.columns());
        said.addAll(
                RecorderBook.besides(request.project().path(), watch.notes()).with(Optional.empty()));
        return said;
    }

    private boolean isConfirmed(String load) {
        return request.confirmsAll() || request.confirmed().contains(load);
    }

    private void refuseUnknown(Project project) {
        Set<String> known = project.loads().stream().map(Load::id).collect(Collectors.toSet());
        List<String> unknown = request.confirmed().stream()
                .filter(each -> !known.contains(each))
                .sorted()
                .toList();
        if (!unknown.isEmpty()) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST, "the project has no load " + Phrase.quoted(unknown, 12) + " to confirm.");
        }
    }

    private void refuseNames(Project project) {
        if (request.use().filter(String::isBlank).isPresent()) {
            throw new JobFailed(JobFailed.Reason.REQUEST, "the use has no name; give one, such as rehearsal.");
        }
        request.use()
                .filter(id ->
                        project.scenes().stream().anyMatch(each -> each.id().equals(id)))
                .ifPresent(id -> {
                    throw new JobFailed(
                            JobFailed.Reason.REQUEST,
                            "the project has a scene " + Phrase.quoted(id) + " already; give another name.");
                });
    }

    private ReadSheets read(AuditJob.Subject subject) {
        if (request.sheets().isEmpty() && request.recording().isPresent()) {
            return new ReadSheets(SiteReadings.NONE, List.of(), List.of());
        }
        Map<String, List<ReadTable>> files = new LinkedHashMap<>();
        for (Path each : request.sheets()) {
            files.put(called(each), tables(each, subject));
        }
        ReadSheets read =
                FilledSheets.read(files, subject.project(), subject.layout().plan(), request.day());
        if (!read.problems().isEmpty()) {
            throw new JobFailed(
                    JobFailed.Reason.INPUT,
                    read.problems().stream()
                            .limit(MOST_PROBLEMS)
                            .map(Harmless::shown)
                            .toList());
        }
        return read;
    }

    /** By its own name, where no other has the same: what is handed over names no folders of this machine. */
    private String called(Path file) {
        long same = request.sheets().stream()
                .filter(each -> each.getFileName().equals(file.getFileName()))
                .count();
        return same > 1 ? file.toString() : file.getFileName().toString();
    }

    private List<ReadTable> tables(Path file, AuditJob.Subject subject) {
        try {
            return SheetTables.of(
                    file, subject.read().sha256(), subject.layout().plan(), watch.notes());
        } catch (IOException e) {
            throw new JobFailed(
                    JobFailed.Reason.INPUT,
                    "'" + Harmless.shown(file.toString()) + "' cannot be read: "
                            + Harmless.shown(String.valueOf(e.getMessage())) + ".");
        }
    }
}
