package evenrise.model.file;

import static evenrise.model.Fixtures.aPlan;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import evenrise.model.plan.Plan;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WholeFileTest {
    private final Plan plan = aPlan().build();

    @TempDir
    private Path folder;

    @Test
    void replacesAnEarlierFileAndLeavesNothingElse() throws IOException {
        Path file = folder.resolve("plan.json");
        Files.writeString(file, "earlier");

        PlanFile.write(plan, file, Format.JSON);

        assertThat(PlanFile.read(file).value()).contains(plan);
        assertThat(names()).containsExactly("plan.json");
    }

    @Test
    void writesTheSameBytesEachTime() throws IOException {
        PlanFile.write(plan, folder.resolve("a.yaml"), Format.YAML);
        PlanFile.write(plan, folder.resolve("b.yaml"), Format.YAML);

        assertThat(folder.resolve("a.yaml")).hasSameBinaryContentAs(folder.resolve("b.yaml"));
    }

    @Test
    void followsASymbolicLink() throws IOException {
        Path real = Files.createDirectory(folder.resolve("store")).resolve("real.json");
        Path link = Files.createSymbolicLink(folder.resolve("plan.json"), Path.of("store", "real.json"));

        PlanFile.write(plan, link, Format.JSON);

        assertThat(Files.isSymbolicLink(link)).isTrue();
        assertThat(PlanFile.read(real).value()).contains(plan);
    }

    @Test
    void keepsThePermissionsOfAnEarlierFile() throws IOException {
        Path file = folder.resolve("plan.json");
        Files.writeString(file, "earlier");
        assumeTrue(Files.getFileStore(file).supportsFileAttributeView("posix"));
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r-----"));

        PlanFile.write(plan, file, Format.JSON);

        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-r-----");
    }

    @Test
    void saysThatTheFolderIsMissing() {
        assertThatThrownBy(() -> PlanFile.write(plan, folder.resolve("none/plan.json"), Format.JSON))
                .isInstanceOf(WriteFailed.class)
                .hasMessageContaining("the folder does not exist");
    }

    @Test
    void saysThatItIsADirectory() throws IOException {
        Files.createDirectory(folder.resolve("plan.json"));

        assertThatThrownBy(() -> PlanFile.write(plan, folder.resolve("plan.json"), Format.JSON))
                .isInstanceOf(WriteFailed.class)
                .hasMessageContaining("it is a directory");
        assertThat(names()).containsExactly("plan.json");
    }

    @Test
    void refusesLinksThatGoRoundInACircle() throws IOException {
        Path target = folder.resolve("plan.json");
        Files.createSymbolicLink(target, target);

        assertThatThrownBy(() -> PlanFile.write(plan, target, Format.JSON))
                .isInstanceOf(WriteFailed.class)
                .hasMessageContaining("circle");
        assertThat(names()).containsExactly("plan.json");
    }

    @Test
    void writesStraightToWhatIsNoRegularFile() throws IOException {
        Path nowhere = Path.of("/dev/null");
        assumeTrue(Files.exists(nowhere));

        PlanFile.write(plan, nowhere, Format.JSON);

        assertThat(Files.isRegularFile(nowhere)).isFalse();
    }

    @Test
    void leavesTheStreamOpenAndSaysWhyItFailed() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PlanFile.write(plan, out, Format.JSON);
        OutputStream full = new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                throw new IOException("No space left on device");
            }
        };

        assertThat(PlanFile.read(out.toByteArray(), "-").value()).contains(plan);
        assertThatThrownBy(() -> PlanFile.write(plan, full, Format.JSON))
                .isInstanceOf(WriteFailed.class)
                .hasMessage("the output could not be written: No space left on device.");
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }
}
