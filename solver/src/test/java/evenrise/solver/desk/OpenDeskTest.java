package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Plan;
import evenrise.solver.app.JobFailed;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OpenDeskTest {
    private static final String TO_SLOT_3 = "{\"load\": \"amp-1\", \"panel\": \"P2\", \"slot\": 3}";

    @TempDir
    private Path folder;

    private Path project() {
        return folder.resolve("project.json");
    }

    private Plan plan() {
        return PlanFile.read(folder.resolve("project.plan.json")).value().orElseThrow();
    }

    private int slotOf(String load) {
        return plan().assignments().stream()
                .filter(each -> each.load().equals(load))
                .mapToInt(Assignment::slot)
                .findFirst()
                .orElseThrow();
    }

    private static Wire window(OpenDesk desk) {
        Wire wire = new Wire(desk.address());
        wire.open();
        return wire;
    }

    @Nested
    class TheFiles {
        @Test
        void stayAsTheyAreWhereNothingIsChanged() throws IOException {
            try (OpenDesk desk = OpenDesk.on(Hall.in(folder), 0, Hall.JOBS)) {
                assertThat(window(desk).get("/api/desk").body()).contains("Small hall");
            }

            assertThat(Files.readString(project())).isEqualTo(Hall.PROJECT);
            assertThat(Files.readString(folder.resolve("project.plan.json"))).isEqualTo(Hall.PLAN);
        }

        @Test
        void holdEveryChangeWithAllFiguresAndCautions() throws IOException {
            try (OpenDesk desk = OpenDesk.on(Hall.in(folder), 0, Hall.JOBS)) {
                assertThat(window(desk).post("/api/move", TO_SLOT_3).code()).isEqualTo(200);
            }

            assertThat(slotOf("amp-1")).isEqualTo(3);
            assertThat(plan().metrics()).isPresent();
            assertThat(plan().assessment()).isPresent();
            assertThat(plan().cautions()).isEqualTo(Cautions.ALL);
            assertThat(plan().madeBy().orElseThrow().projectSha256())
                    .isEqualTo(ProjectFile.read(project()).sha256());
            assertThat(ProjectFile.read(project()).value().orElseThrow().cautions())
                    .isEqualTo(Cautions.ALL);
        }

        @Test
        void areMadeWhereThereWereNone() {
            String list = "Qty\\tName\\tRoom\\tWatts\\n2\\tDSP unit\\tRack room\\t200\\n";
            try (OpenDesk desk = OpenDesk.on(folder, 0, Hall.JOBS)) {
                Wire wire = window(desk);

                assertThat(wire.get("/api/list/loads").body()).contains("no project in this folder yet");
                assertThat(wire.post("/api/list/take", "{\"text\": \"" + list + "\"}")
                                .code())
                        .isEqualTo(200);
            }

            assertThat(ProjectFile.read(project()).value().orElseThrow().loads())
                    .isNotEmpty();
        }

        @Test
        void ofAProjectThatIsWrongAreNotTouchedAndTheDeskDoesNotOpen() throws IOException {
            Files.writeString(project(), Hall.PROJECT.replace("\"poles\": 3", "\"poles\": 7"));

            assertThatThrownBy(() -> OpenDesk.on(folder, 0, Hall.JOBS))
                    .isInstanceOf(JobFailed.class)
                    .hasMessageContaining("poles of load 'hoist' is 7");
            assertThat(Files.readString(project())).contains("\"poles\": 7");
        }
    }

    @Nested
    class AnotherProgram {
        /** Looked at every second; what it wrote is on the desk, and what was there can be brought back. */
        @Test
        void thatChangesAFileIsNoticedAndTold() throws IOException {
            try (OpenDesk desk = OpenDesk.on(Hall.in(folder), 0, Hall.JOBS)) {
                Wire wire = window(desk);
                Files.writeString(project(), Hall.PROJECT.replace("Small hall", "Hall of others"));

                String now = wire.get("/api/desk").body();
                while (!now.contains("another program changed the files")) {
                    Thread.onSpinWait();
                    now = wire.get("/api/desk").body();
                }

                assertThat(now).contains("\"name\":\"Hall of others\"", "\"undo\":\"what another program changed\"");
                assertThat(wire.post("/api/undo", "{}").body()).contains("\"name\":\"Small hall\"");
            }
        }

        @Test
        void thatSpoilsAFileIsToldAndTheDeskGoesOn() throws IOException {
            try (OpenDesk desk = OpenDesk.on(Hall.in(folder), 0, Hall.JOBS)) {
                Wire wire = window(desk);
                Files.writeString(project(), "{");

                String now = wire.get("/api/desk").body();
                while (!now.contains("cannot be read")) {
                    Thread.onSpinWait();
                    now = wire.get("/api/desk").body();
                }

                assertThat(now).contains("\"name\":\"Small hall\"");
                assertThat(wire.post("/api/move", TO_SLOT_3).code()).isEqualTo(200);
            }

            assertThat(ProjectFile.read(project()).value().map(each -> each.name()))
                    .isEqualTo(Optional.of("Small hall"));
        }
    }

    @Nested
    class TheFolder {
        @Test
        void hasOneDeskAndTheNextIsToldWhichToUse() {
            try (OpenDesk first = OpenDesk.on(Hall.in(folder), 0, Hall.JOBS)) {
                assertThat(first.address()).isNotEmpty();
                assertThatThrownBy(() -> OpenDesk.on(folder, 0, Hall.JOBS))
                        .isInstanceOf(JobFailed.class)
                        .hasMessageContaining("is on another desk already");
            }
            try (OpenDesk next = OpenDesk.on(folder, 0, Hall.JOBS)) {
                assertThat(next.address()).isNotEmpty();
            }
        }

        @Test
        void withSeveralProjectsAsksWhich() throws IOException {
            Files.writeString(folder.resolve("a.project.json"), Hall.PROJECT);
            Files.writeString(folder.resolve("b.project.json"), Hall.PROJECT);

            assertThatThrownBy(() -> OpenDesk.on(folder, 0, Hall.JOBS))
                    .hasMessageContaining("'a.project.json', 'b.project.json'");
            try (OpenDesk desk = OpenDesk.on(folder.resolve("b.project.json"), 0, Hall.JOBS)) {
                assertThat(window(desk).get("/api/desk").body()).contains("b.plan.json");
            }
        }

        @Test
        void thatIsNotThereIsSaid() {
            assertThatThrownBy(() -> OpenDesk.on(folder.resolve("none"), 0, Hall.JOBS))
                    .hasMessageContaining("is no folder and no project's file");
        }
    }

    @Test
    void aPortThatIsTakenIsSaid() {
        try (OpenDesk first = OpenDesk.on(Hall.in(folder), 0, Hall.JOBS)) {
            int port = new Wire(first.address()).port;
            Path other = folder.resolve("other");
            assertThat(other.toFile().mkdir()).isTrue();

            assertThatThrownBy(() -> OpenDesk.on(other, port, Hall.JOBS)).hasMessageContaining("port " + port);
        }
    }

    @Test
    void everyWindowSeesWhatAnotherDoes() {
        try (OpenDesk desk = OpenDesk.on(Hall.in(folder), 0, Hall.JOBS)) {
            Wire wire = window(desk);

            assertThat(wire.post("/api/move", TO_SLOT_3).code()).isEqualTo(200);

            assertThat(wire.get("/api/desk").body()).contains("\"undo\":\"amp-1 to P2, slot 3\"");
        }
    }
}
