package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.app.Jobs;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** With the engine itself: a plan of many is the plan of one. */
class PortfolioOfOneTest {
    @TempDir
    private Path folder;

    @Test
    void findsThePlanThatTheSameSeedAndMovesFindAlone() throws IOException {
        Path project = Files.writeString(folder.resolve("hall.project.json"), SmallHall.PROJECT);
        String alone = folder.resolve("alone.plan.json").toString();
        String many = folder.resolve("many").toString();

        run("plan", project.toString(), "--moves", "300", "--seed", "2", "-o", alone);
        run("portfolio", project.toString(), "--moves", "300", "--seeds", "1..3", "--threads", "2", "-o", many);

        try (Stream<Path> answers = Files.list(Path.of(many, "answers"))) {
            assertThat(answers.filter(file -> file.toString().endsWith(".plan.json"))
                            .map(PortfolioOfOneTest::text))
                    .hasSize(3)
                    .contains(text(Path.of(alone)));
        }
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void run(String... arguments) {
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        Terminal terminal = new Terminal(
                new ByteArrayInputStream(new byte[0]), said, said, StandardCharsets.UTF_8, false, false, false);

        int code = Evenrise.run(terminal, new Jobs(), arguments);

        assertThat(code)
                .as(said.toString(StandardCharsets.UTF_8))
                .isIn(ExitCode.DONE, ExitCode.LIMITS_BROKEN, ExitCode.RULES_BROKEN);
    }
}
