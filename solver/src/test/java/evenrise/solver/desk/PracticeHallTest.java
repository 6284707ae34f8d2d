package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.ProjectFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The invented hall for somebody who has no project yet. */
class PracticeHallTest {
    @TempDir
    private Path folder;

    @Test
    void liesOnTheDeskAndInTheFolderWhereThereWasNoProject() throws IOException {
        Path empty = Files.createDirectory(folder.resolve("empty"));
        try (OpenDesk desk = OpenDesk.on(empty, 0, Hall.JOBS)) {
            Wire wire = new Wire(desk.address());
            wire.open();

            assertThat(wire.post("/api/practice", "{}").body()).contains("Practice hall, invented");
        }
        assertThat(ProjectFile.read(empty.resolve("project.json"))
                        .value()
                        .orElseThrow()
                        .loads())
                .hasSize(30);
    }

    @Test
    void takesNoProjectsPlace() throws IOException {
        try (OpenDesk desk = OpenDesk.on(Hall.in(folder), 0, Hall.JOBS)) {
            Wire wire = new Wire(desk.address());
            wire.open();

            assertThat(wire.post("/api/practice", "{}").body()).contains("a project lies on the desk already");
        }
    }
}
