package evenrise.solver.cli;

import evenrise.model.file.Format;
import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.WholeFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.report.FrontSheet;
import evenrise.solver.report.Json;
import evenrise.solver.report.Sanitizer;
import evenrise.solver.report.WorkFile;
import evenrise.solver.report.WorkSheetText;
import evenrise.solver.rework.Front;
import evenrise.solver.rework.FrontPoint;
import evenrise.solver.rework.WorkOrder;
import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.Set;

/** Where a rework goes: a folder with the front, a plan a point, and the work. */
final class ReworkFolder {
    static final String MEASURED = "project-as-measured.json";
    private static final String FRONT = "front.json";

    private final Path folder;

    private ReworkFolder(Path folder) {
        this.folder = folder;
    }

    /** @throws Failure where nothing could be written there, so that nobody waits for what gets lost */
    static ReworkFolder of(String name) {
        Path folder = Inputs.path(name);
        String shown = "'" + Sanitizer.clean(name) + "'";
        try {
            if (Files.exists(folder) && !Files.isDirectory(folder)) {
                throw new Failure(ExitCode.NOT_WRITTEN, "output " + shown + " is a file. Name a folder.");
            }
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new Failure(
                    ExitCode.NOT_WRITTEN, "output folder " + shown + " cannot be made: " + e.getMessage() + ".");
        }
        if (!Files.isWritable(folder)) {
            throw new Failure(ExitCode.NOT_WRITTEN, "output folder " + shown + " may not be written to.");
        }
        return new ReworkFolder(folder);
    }

    Path path() {
        return folder;
    }

    /** Writes the project with the currents as measured; gives the file. */
    Path measured(Project project) {
        Path file = folder.resolve(MEASURED);
        writing(() -> ProjectFile.write(project, file, Format.JSON));
        return file;
    }

    void write(Project project, Plan built, Front front, FrontPoint chosen, WorkOrder order) {
        FrontSheet sheet = FrontSheet.of(project.name(), front, chosen);
        Set<FrontPoint> points = new LinkedHashSet<>(front.points());
        points.add(chosen);
        removeEarlierPlans();
        writing(() -> {
            for (FrontPoint each : points) {
                PlanFile.write(each.plan(), folder.resolve(FrontSheet.planName(each.moves())), Format.JSON);
            }
            WholeFile.write(folder.resolve("front.csv"), sheet.csv());
            WholeFile.write(folder.resolve(FRONT), Json.of(sheet) + "\n");
            WholeFile.write(folder.resolve("work.json"), Json.of(WorkFile.of(Cautions.ALL, order)) + "\n");
            WholeFile.write(folder.resolve("work.txt"), WorkSheetText.pages(project, built, order));
        });
    }

    /** Plans of an earlier rework in this folder would pass for plans of this one. */
    private void removeEarlierPlans() {
        if (!Files.exists(folder.resolve(FRONT))) {
            return;
        }
        try (DirectoryStream<Path> earlier = Files.newDirectoryStream(folder, "plan-[0-9][0-9][0-9][0-9].json")) {
            for (Path each : earlier) {
                Files.delete(each);
            }
        } catch (IOException | DirectoryIteratorException e) {
            throw new Failure(
                    ExitCode.NOT_WRITTEN, "plans of an earlier rework cannot be removed: " + e.getMessage() + ".");
        }
    }

    private interface Writing {
        void run() throws WriteFailed;
    }

    private static void writing(Writing what) {
        try {
            what.run();
        } catch (WriteFailed e) {
            throw new Failure(ExitCode.NOT_WRITTEN, e.getMessage());
        }
    }
}
