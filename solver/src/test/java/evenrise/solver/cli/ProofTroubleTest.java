package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.PlanFile;
import evenrise.model.plan.Plan;
import evenrise.solver.app.Jobs;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The engine itself with its proofs, on a project of which they can say nothing. */
class ProofTroubleTest {
    @TempDir
    private Path folder;

    /** Its load L2 has three poles; with phases B and A in turn, and four slots elsewhere, no slot can take it. */
    @Test
    void aLoadThatNoSlotTakesCostsTheProofAndNotThePlan() throws IOException {
        Path plan = folder.resolve("plan.json");
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Terminal terminal = new Terminal(
                new ByteArrayInputStream(new byte[0]),
                new ByteArrayOutputStream(),
                err,
                StandardCharsets.UTF_8,
                false,
                false,
                false);

        int code = Evenrise.run(
                terminal,
                new Jobs(),
                "plan",
                project().toString(),
                "-o",
                plan.toString(),
                "--moves",
                "2000",
                "--quiet");

        assertThat(code).isEqualTo(ExitCode.RULES_BROKEN);
        assertThat(err.toString(StandardCharsets.UTF_8))
                .contains("nothing is proven of this project: load L2 has no slot that it can use")
                .doesNotContain("should not have happened");
        Plan read = PlanFile.read(Files.readAllBytes(plan), "plan").value().orElseThrow();
        assertThat(read.violations())
                .singleElement()
                .satisfies(broken -> assertThat(broken.message()).contains("'L2'", "no assignment"));
    }

    private Path project() throws IOException {
        Path file = folder.resolve("project.json");
        try (InputStream in = getClass().getResourceAsStream("/truth/no-slot-takes-it.project.json")) {
            Files.write(file, in.readAllBytes());
        }
        return file;
    }
}
