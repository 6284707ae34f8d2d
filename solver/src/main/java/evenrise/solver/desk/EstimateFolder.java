package evenrise.solver.desk;

import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.app.JobFailed;
import java.nio.file.Path;
import java.util.regex.Pattern;

/** The folder beside the project's file in which make-ups and their plans lie, as {@code compare} writes them. */
final class EstimateFolder {
    private static final String USUAL = "estimate";
    private static final Pattern MAKE_UP = Pattern.compile("[a-z0-9][a-z0-9-]{0,59}");

    private final DeskFiles files;

    EstimateFolder(DeskFiles files) {
        this.files = files;
    }

    /** Of a project that is not alone in its folder it has the project's name. */
    Path path() {
        return files.folder().resolve(name());
    }

    String name() {
        String project =
                files.project().getFileName().toString().replaceFirst("(?i)[.]?project[.](json|yaml|yml)$", "");
        return project.isEmpty() || project.equals(files.project().getFileName().toString())
                ? USUAL
                : project + "-" + USUAL;
    }

    /**
     * A make-up with its plan.
     *
     * @param makeUp as the files are called, without their endings
     * @throws JobFailed where there is none
     */
    DeskState state(String makeUp) {
        if (!MAKE_UP.matcher(makeUp).matches()) {
            throw missing();
        }
        Reading<Project> project = ProjectFile.read(path().resolve(makeUp + ".project.json"));
        Project found = project.value().orElseThrow(EstimateFolder::missing);
        Plan plan = PlanFile.read(path().resolve(makeUp + ".plan.json"), found)
                .value()
                .orElseThrow(EstimateFolder::missing);
        return new DeskState(found, project.notes(), plan);
    }

    private static JobFailed missing() {
        return new JobFailed(
                JobFailed.Reason.REQUEST,
                "this make-up has no plan in the folder any more. Look for the least price again.");
    }
}
