package evenrise.solver.hardship;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Whatever a project, a plan or a script holds, no command fails unexpectedly, shows names of classes or a figure that is
 * none, refuses what another has written, or takes many times what the file's valid neighbour takes. A sample, the same
 * each time; {@code -Devenrise.fuzz.path=10000} tries as many.
 */
@Tag("slow")
class PathFuzzTest {
    private static final int SAMPLE = Integer.getInteger("evenrise.fuzz.path", 20);
    private static final long FIRST = Long.getLong("evenrise.fuzz.first", 0);

    @TempDir
    private Path folder;

    @Test
    void neighboursOfValidFilesGoThroughEveryCommand() throws IOException {
        PathRun run = new PathRun(folder.resolve("run"));

        run.trials(FIRST, SAMPLE);

        Files.writeString(Path.of("target", "hardship-path.txt"), run.summary());
        assertThat(run.faults()).isEmpty();
        assertThat(run.planned()).isGreaterThan(SAMPLE / 4);
    }

    @Test
    void casesAtTheEdgeOfWhatTheFilesAllowGoThroughEveryCommand() throws IOException {
        PathRun run = new PathRun(folder.resolve("run"));

        for (Map.Entry<String, HardCases.Case> each : HardCases.all().entrySet()) {
            HardCases.Case hard = each.getValue();
            run.walk(
                    hard.project(),
                    hard.plan(),
                    hard.script(),
                    new Random(each.getKey().hashCode()));
            assertThat(run.faults()).as(each.getKey()).isEmpty();
        }
    }
}
