package evenrise.solver.desk;

import evenrise.model.contract.Words;
import evenrise.model.file.Format;
import evenrise.model.file.MappingFile;
import evenrise.model.file.SideNotes;
import evenrise.model.intake.Columns;
import evenrise.model.project.Project;
import evenrise.solver.app.ImportRequest;
import evenrise.solver.app.ImportResult;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.TextStyle;
import evenrise.solver.desk.DeskAnswers.ReadListView;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Equipment lists pasted from a spreadsheet: read as every list is, looked at, then taken as the project. */
final class PastedLists {
    /** What a column may mean. */
    private static final List<String> MEANINGS = Arrays.stream(Columns.class.getRecordComponents())
            .map(each -> Words.key(each.getName()))
            .toList();

    private static final String NO_ROOM = "nothing can be written in the folder for temporary files.";

    private final Jobs jobs;

    PastedLists(Jobs jobs) {
        this.jobs = jobs;
    }

    ReadListView read(DeskRequests.PastedList asked) {
        ImportResult result = result(asked);
        return new ReadListView(
                result.project().map(project -> project.loads().size()).orElse(0),
                result.problems(),
                result.questions(),
                result.guesses(),
                result.project().map(PastedLists::unswitched).orElse(List.of()),
                result.columns(),
                result.texts(),
                MEANINGS,
                result.mapping(),
                result.text(TextStyle.PLAIN));
    }

    private static List<String> unswitched(Project project) {
        return project.loads().stream()
                .filter(load -> !load.switched())
                .map(load -> load.name())
                .distinct()
                .toList();
    }

    /** Rows that cannot be taken over are left out: whoever takes the list has been told of them. */
    DeskState taken(DeskRequests.PastedList asked) {
        ImportResult result = result(asked);
        Project project = result.project()
                .orElseThrow(() -> new JobFailed(
                        JobFailed.Reason.INPUT,
                        result.problems().isEmpty() ? List.of("the list holds no load.") : result.problems()));
        return DeskState.unplanned(project, SideNotes.NONE);
    }

    private ImportResult result(DeskRequests.PastedList asked) {
        Path list = aside(".csv");
        Path mapping = aside(".json");
        try {
            Files.writeString(list, asked.text());
            if (asked.mapping().isPresent()) {
                MappingFile.write(asked.mapping().get(), mapping, Format.JSON);
            }
            return jobs.importList(new ImportRequest(
                    list,
                    asked.mapping().map(any -> mapping),
                    Optional.of(asked.name().isBlank() ? "Pasted list" : asked.name()),
                    Optional.empty(),
                    true,
                    false,
                    List.of(),
                    Optional.empty()));
        } catch (IOException e) {
            throw new JobFailed(JobFailed.Reason.OUTPUT, NO_ROOM);
        } finally {
            list.toFile().delete();
            mapping.toFile().delete();
        }
    }

    private static Path aside(String ending) {
        try {
            return Files.createTempFile("evenrise-desk", ending);
        } catch (IOException e) {
            throw new JobFailed(JobFailed.Reason.OUTPUT, NO_ROOM);
        }
    }
}
