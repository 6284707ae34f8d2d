package evenrise.solver.desk;

import evenrise.model.contract.Harmless;
import evenrise.model.file.Json;
import evenrise.model.file.TitleBlockFile;
import evenrise.model.file.WholeFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.project.TitleBlock;
import evenrise.solver.app.CsvStyle;
import evenrise.solver.app.DocumentFormat;
import evenrise.solver.app.DocumentSet;
import evenrise.solver.app.DrawnDocuments;
import evenrise.solver.app.Effort;
import evenrise.solver.app.JobControl;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.LabelOrder;
import evenrise.solver.app.ReportRequest;
import evenrise.solver.app.Source;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Draws documents of what lies on the desk as they are asked for, and keeps the title block for the next time. */
final class SetDrawing {
    static final String TITLE_FILE = "title-block.json";

    private final DeskFiles files;
    private final Branches branches;
    private final Jobs jobs;

    SetDrawing(DeskFiles files, Branches branches, Jobs jobs) {
        this.files = files;
        this.branches = branches;
        this.jobs = jobs;
    }

    /** Today where none is said. */
    String date(String asked) {
        return asked.isBlank() ? DocumentSet.into(files.folder()).date() : asked;
    }

    /** As it was kept. */
    TitleBlock title() {
        Path file = files.folder().resolve(TITLE_FILE);
        return Files.isRegularFile(file) ? TitleBlockFile.read(file).value().orElse(TitleBlock.NONE) : TitleBlock.NONE;
    }

    /**
     * Where documents go that are asked to go into a folder beside the project's file.
     *
     * @throws JobFailed where that is no name of a folder there
     */
    Path folder(String asked) {
        Path folder = files.folder().resolve(Branches.named(asked));
        if (Files.isSymbolicLink(folder)) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    "'" + Harmless.shown(asked) + "' leads to another place. Name another folder.");
        }
        return folder;
    }

    DrawnDocuments of(DeskState state, DocumentRequests.Draw asked, JobControl control) {
        TitleBlock title = asked.title().orElse(TitleBlock.NONE);
        DocumentSet set = DocumentSet.into(files.folder().resolve("documents"))
                .withSections(asked.sections())
                .withFormats(asked.formats().isEmpty() ? DocumentFormat.ALL : formats(asked.formats()))
                .withImprint(asked.revision().isBlank() ? "A" : asked.revision(), date(asked.date()))
                .withLabels(new LabelOrder(
                        asked.labels(), asked.labelLink().isBlank() ? LabelOrder.NONE.address() : asked.labelLink()))
                .withLanguage(asked.language().isBlank() ? "en" : asked.language())
                .withCsv(new CsvStyle(asked.csvKeys(), asked.csvMark()))
                .withTitleBlock(Source.stream(
                        new ByteArrayInputStream(Json.of(title).getBytes(StandardCharsets.UTF_8)), "the title block"));
        Source project = Source.stream(
                new ByteArrayInputStream(files.bytes(state.project(), state.notes())),
                files.project().getFileName().toString());
        DrawnDocuments drawn = jobs.draw(
                new ReportRequest(
                        project,
                        Source.of(state.plan()),
                        set,
                        asked.against().isEmpty()
                                ? Optional.empty()
                                : Optional.of(Source.file(branches.file(asked.against()))),
                        Optional.empty(),
                        Optional.empty(),
                        asked.trials(),
                        Effort.USUAL),
                control);
        keep(title);
        return drawn;
    }

    private static List<DocumentFormat> formats(List<String> words) {
        return words.stream()
                .map(word -> DocumentFormat.ALL.stream()
                        .filter(each -> each.word().equals(word))
                        .findFirst()
                        .orElseThrow(() -> new JobFailed(
                                JobFailed.Reason.REQUEST,
                                "'" + Harmless.shown(word)
                                        + "' is no kind of file, expected of html, pdf, xlsx, dxf, csv.")))
                .toList();
    }

    /** For the next time, and for {@code report --title-block}. */
    private void keep(TitleBlock title) {
        if (!title.equals(title())) {
            try {
                WholeFile.write(files.folder().resolve(TITLE_FILE), Json.of(title) + "\n");
            } catch (WriteFailed e) {
                throw new JobFailed(JobFailed.Reason.OUTPUT, e.getMessage());
            }
        }
    }
}
