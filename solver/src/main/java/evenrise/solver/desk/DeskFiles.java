package evenrise.solver.desk;

import evenrise.model.contract.Harmless;
import evenrise.model.contract.Phrase;
import evenrise.model.file.Format;
import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.file.SideNotes;
import evenrise.model.file.WholeFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.PlanTarget;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The project's file and its plan's beside it: read, written as a whole, and watched for what other programs do. */
final class DeskFiles {
    private static final String PROJECT_NAMES = "(?i)(.+[.])?project[.](json|yaml|yml)";
    private static final int NAMED = 5;
    private static final String NONE = "";

    private final Path folder;
    private final Path project;
    private final Path plan;
    private String projectSha256 = NONE;
    private String planSha256 = NONE;
    /** What this desk has written last, where nobody else has since. */
    private Optional<Held> held = Optional.empty();

    private record Held(Project project, SideNotes notes) {
        boolean is(Project other, SideNotes otherNotes) {
            return project == other && notes == otherNotes;
        }
    }

    private DeskFiles(Path folder, Path project) {
        this.folder = folder;
        this.project = project;
        this.plan = PlanTarget.besides(project).file().orElseThrow();
    }

    /**
     * @param place a folder with one project, or with none, where one begins; or the project's file
     * @throws JobFailed where it is neither
     */
    static DeskFiles of(Path place) {
        if (Files.isRegularFile(place)) {
            return new DeskFiles(place.toAbsolutePath().getParent(), place);
        }
        if (!Files.isDirectory(place)) {
            throw new JobFailed(
                    JobFailed.Reason.INPUT,
                    "'" + Harmless.shown(place.toString()) + "' is no folder and no project's file.");
        }
        try (Stream<Path> files = Files.list(place)) {
            List<Path> projects = files.filter(Files::isRegularFile)
                    .filter(each -> each.getFileName().toString().matches(PROJECT_NAMES))
                    .sorted()
                    .toList();
            if (projects.size() > 1) {
                List<String> names = projects.stream()
                        .map(each -> each.getFileName().toString())
                        .toList();
                throw new JobFailed(
                        JobFailed.Reason.REQUEST,
                        "the folder holds several projects: " + Phrase.quoted(names, NAMED)
                                + ". Say which file in place of the folder.");
            }
            return new DeskFiles(place, projects.isEmpty() ? place.resolve("project.json") : projects.get(0));
        } catch (IOException e) {
            throw new JobFailed(JobFailed.Reason.INPUT, "'" + Harmless.shown(place.toString()) + "' cannot be read.");
        }
    }

    static boolean isCalledAProject(Path file) {
        return file.getFileName().toString().matches(PROJECT_NAMES);
    }

    Path folder() {
        return folder;
    }

    Path project() {
        return project;
    }

    Path plan() {
        return plan;
    }

    boolean hasProject() {
        return Files.exists(project);
    }

    boolean hasPlan() {
        return Files.exists(plan);
    }

    synchronized Reading<Project> readProject() {
        Reading<Project> read = ProjectFile.read(project);
        projectSha256 = read.sha256();
        held = Optional.empty();
        return read;
    }

    /** @param of the project that it is a plan of */
    synchronized Reading<Plan> readPlan(Project of) {
        Reading<Plan> read = PlanFile.read(plan, of);
        planSha256 = read.sha256();
        return read;
    }

    /** Whether a file is another than this desk has read or written last. */
    synchronized boolean areChangedElsewhere() {
        return isAnother(project, projectSha256) || isAnother(plan, planSha256);
    }

    private static boolean isAnother(Path file, String sha256) {
        try {
            // What is gone is written again, and what cannot be read now is looked at again later.
            return Files.exists(file) && !sha256(Files.readAllBytes(file)).equals(sha256);
        } catch (IOException e) {
            return false;
        }
    }

    /** @return SHA-256 of what is in the file now */
    synchronized String write(Project of, SideNotes notes) throws WriteFailed {
        if (held.filter(each -> each.is(of, notes)).isPresent() && Files.exists(project)) {
            // A plan changes more often than its project.
            return projectSha256;
        }
        ByteArrayOutputStream text = new ByteArrayOutputStream();
        ProjectFile.write(of, notes, text, Format.ofName(project.toString()));
        String sha256 = sha256(text.toByteArray());
        if (!sha256.equals(projectSha256)) {
            WholeFile.write(project, text.toByteArray());
            projectSha256 = sha256;
        }
        held = Optional.of(new Held(of, notes));
        return sha256;
    }

    synchronized void write(Plan of) throws WriteFailed {
        ByteArrayOutputStream text = new ByteArrayOutputStream();
        PlanFile.write(of, text, Format.ofName(plan.toString()));
        String sha256 = sha256(text.toByteArray());
        if (!sha256.equals(planSha256)) {
            WholeFile.write(plan, text.toByteArray());
            planSha256 = sha256;
        }
    }

    /** The project's file as it is, where it says what lies on the desk, else as it is going to be written. */
    synchronized byte[] bytes(Project of, SideNotes notes) {
        try {
            byte[] there = Files.exists(project) ? Files.readAllBytes(project) : new byte[0];
            if (ProjectFile.read(there, project.toString())
                    .value()
                    .filter(of::equals)
                    .isPresent()) {
                return there;
            }
        } catch (IOException e) {
            // What cannot be read now is written anew when its turn comes.
        }
        ByteArrayOutputStream text = new ByteArrayOutputStream();
        try {
            ProjectFile.write(of, notes, text, Format.ofName(project.toString()));
        } catch (WriteFailed e) {
            throw new IllegalStateException("memory takes what is written", e);
        }
        return text.toByteArray();
    }

    static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
