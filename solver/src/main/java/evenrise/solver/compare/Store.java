package evenrise.solver.compare;

import evenrise.model.file.Format;
import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.SideNotes;
import evenrise.model.file.WriteFailed;
import evenrise.model.plan.Plan;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;

/** The folder of a comparison: each scenario's project and plan, written whole, so that an interrupted one goes on. */
final class Store {
    private final Path folder;
    private final SideNotes notes;

    Store(Path folder, SideNotes notes) {
        this.folder = folder;
        this.notes = notes;
    }

    Path project(Scenario scenario) {
        return folder.resolve(scenario.key() + ".project.json");
    }

    Path plan(Scenario scenario) {
        return folder.resolve(scenario.key() + ".plan.json");
    }

    /** Hash of the scenario's project file, which is written where it is not there yet or is another. */
    String keepProject(Scenario scenario) throws WriteFailed {
        Path file = project(scenario);
        if (!isThere(file, scenario)) {
            ProjectFile.write(scenario.project(), notes, file, Format.JSON);
        }
        return ProjectFile.read(file).sha256();
    }

    /** The plan of an earlier run of the same scenario with the same budget. */
    Optional<Plan> earlier(Scenario scenario, String sha256, long seed, long moves) {
        Path file = plan(scenario);
        return Files.isRegularFile(file)
                ? PlanFile.read(file, scenario.project())
                        .value()
                        .filter(plan -> plan.madeBy()
                                .filter(made -> made.projectSha256().equals(sha256)
                                        && made.seed() == seed
                                        && made.movesAllowed().orElse(-1) == moves)
                                .isPresent())
                : Optional.empty();
    }

    void keepPlan(Scenario scenario, Plan plan) throws WriteFailed {
        PlanFile.write(plan, plan(scenario), Format.JSON);
    }

    private boolean isThere(Path file, Scenario scenario) throws WriteFailed {
        ByteArrayOutputStream wanted = new ByteArrayOutputStream();
        ProjectFile.write(scenario.project(), notes, wanted, Format.JSON);
        try {
            return Files.isRegularFile(file) && Arrays.equals(Files.readAllBytes(file), wanted.toByteArray());
        } catch (IOException e) {
            return false;
        }
    }
}
