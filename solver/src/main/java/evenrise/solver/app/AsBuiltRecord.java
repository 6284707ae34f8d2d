package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.evaluation.Evaluation;
import evenrise.model.file.FileSet;
import evenrise.model.file.Format;
import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.measured.MeasuredPlant;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.rendering.CommissioningReport;
import evenrise.solver.rendering.OverlaidCurves;
import evenrise.solver.report.RenewalGain;
import evenrise.solver.report.SiteRecord;
import evenrise.solver.table.Csv;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;

/**
 * A plant as built, in one folder: project with what was measured, plan judged by it, report to be signed, differences, open
 * points, and all documents.
 */
final class AsBuiltRecord {
    private static final String HTML = "commissioning.html";
    private static final String PDF = "commissioning.pdf";
    private static final String DIFFERENCES = "differences.csv";
    private static final String OPEN = "open-points.csv";
    private static final String PROJECT = "project-as-built.json";
    private static final String PLAN = "plan-as-built.json";
    private static final String DOCUMENTS = "documents";

    private final DocumentSet wanted;
    private final List<Source> inputs;
    private final DocumentFiles documents;

    /**
     * @param inputs what it is made from, which it never overwrites
     * @param note takes what is left out of account
     */
    AsBuiltRecord(DocumentSet wanted, List<Source> inputs, Consumer<String> note) {
        this.wanted = wanted;
        this.inputs = inputs;
        this.documents = new DocumentFiles(
                wanted.withFolder(wanted.folder().resolve(DOCUMENTS))
                        .withFormats(List.of(
                                DocumentFormat.HTML, DocumentFormat.PDF, DocumentFormat.XLSX, DocumentFormat.CSV)),
                inputs,
                note);
    }

    /** @throws JobFailed where it could not be written, so that nobody waits for what gets lost */
    void refuseWhatIsNotOurs() {
        documents.refuseWhatIsNotOurs();
        List<String> names = List.of(HTML, PDF, DIFFERENCES, OPEN, PROJECT, PLAN);
        names.forEach(name -> Outputs.refuseInputs(wanted.folder().resolve(name), inputs));
        try {
            List<String> foreign = new FileSet(wanted.folder()).foreign(names);
            if (!wanted.overwrites() && !foreign.isEmpty()) {
                throw new JobFailed(
                        JobFailed.Reason.OUTPUT,
                        "folder '" + Harmless.shown(wanted.folder().toString())
                                + "' holds files that no earlier run wrote or that were changed since: "
                                + Harmless.shown(String.join(", ", foreign))
                                + ". Name another folder, or --force to overwrite them.");
            }
        } catch (WriteFailed e) {
            throw new JobFailed(JobFailed.Reason.OUTPUT, e.getMessage());
        }
    }

    /** @return the names of what is written */
    List<String> write(
            AuditJob.Subject subject,
            MeasuredPlant plant,
            RenewalGain gain,
            List<String> days,
            List<String> files,
            Optional<RecordedPlant> recorded,
            List<String> notes) {
        Project project = plant.refitted().project();
        byte[] projectBytes = ReworkFolder.bytes(
                out -> ProjectFile.write(project, subject.read().notes(), out, Format.JSON));
        String sha256 = ProjectFile.read(projectBytes, PROJECT).sha256();
        Plan built = subject.layout().plan();
        Plan signed = built.with()
                .cautions(Cautions.ALL)
                .madeBy(built.madeBy().map(each -> each.withProjectSha256(sha256)))
                .build();
        Evaluation evaluation =
                Evaluation.of(Layout.of(project, signed), () -> ProvenBounds.of(project), Optional.empty());
        SiteRecord record = SiteRecord.of(
                plant,
                gain,
                wanted.revision(),
                wanted.date(),
                sha256,
                days,
                files,
                recorded.map(RecordedPlant::notes).orElse(List.of()),
                notes);
        Optional<OverlaidCurves> curves = recorded.map(RecordedPlant::curves);
        Map<String, byte[]> written = new LinkedHashMap<>();
        written.put(HTML, utf8(CommissioningReport.html(record, curves)));
        written.put(PDF, CommissioningReport.pdf(record, curves));
        written.put(DIFFERENCES, utf8(Csv.of(SiteRecord.values(plant))));
        written.put(OPEN, utf8(Csv.of(open(record))));
        written.put(PROJECT, projectBytes);
        written.put(PLAN, ReworkFolder.bytes(out -> PlanFile.write(evaluation.plan(), out, Format.JSON)));
        FileSet set = new FileSet(wanted.folder());
        written.forEach(set::add);
        Outputs.write(set::write);
        List<String> more = documents.write(evaluation, sha256, Optional.empty(), List.of());
        return Stream.concat(written.keySet().stream(), more.stream().map(each -> DOCUMENTS + "/" + each))
                .toList();
    }

    private static List<List<String>> open(SiteRecord record) {
        List<List<String>> rows = new ArrayList<>(List.of(List.of("open point", "who", "until", "done")));
        record.open().forEach(each -> rows.add(List.of(each, "", "", "")));
        return rows;
    }

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
