package evenrise.solver.desk;

import evenrise.model.file.SideNotes;
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
import java.util.List;
import java.util.Optional;

/** Equipment lists pasted from a spreadsheet: read as every list is, looked at, then taken as the project. */
final class PastedLists {
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
                result.text(TextStyle.PLAIN));
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
        try {
            Path aside = Files.createTempFile("evenrise-desk", ".csv");
            try {
                Files.writeString(aside, asked.text());
                return jobs.importList(new ImportRequest(
                        aside,
                        Optional.empty(),
                        Optional.of(asked.name().isBlank() ? "Pasted list" : asked.name()),
                        Optional.empty(),
                        true,
                        false,
                        List.of(),
                        Optional.empty()));
            } finally {
                Files.deleteIfExists(aside);
            }
        } catch (IOException e) {
            throw new JobFailed(JobFailed.Reason.OUTPUT, "nothing can be written in the folder for temporary files.");
        }
    }
}
