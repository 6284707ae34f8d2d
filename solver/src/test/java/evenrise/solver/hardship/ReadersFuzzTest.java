package evenrise.solver.hardship;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Whatever a file of ours holds, reading it ends, says what is wrong in words of the trade, and takes little. A sample of
 * neighbours, the same each time; {@code -Devenrise.fuzz=1000000} tries as many.
 */
@Tag("slow")
class ReadersFuzzTest {
    private static final Path KEPT = Path.of("src", "test", "resources", "hardship");
    private static final int SAMPLE = Integer.getInteger("evenrise.fuzz", 2_000);
    private static final long FIRST = Long.getLong("evenrise.fuzz.first", 0);

    @TempDir
    private Path folder;

    @Test
    void neighboursOfValidFilesAreReadWithoutAFault() throws IOException {
        ReaderRun run = new ReaderRun(folder);

        run.trials(FIRST, SAMPLE, List.of(Source.values()));

        Files.writeString(Path.of("target", "hardship-readers.txt"), run.summary());
        assertThat(run.faults()).isEmpty();
        // Some are still valid, so that the readers were not stopped at the door each time.
        assertThat(run.accepted()).isGreaterThan(SAMPLE / 50);
    }

    @ParameterizedTest
    @MethodSource
    void inputsThatOnceFailedAreReadWithoutAFault(Path kept) throws IOException {
        Source source = Source.valueOf(kept.getParent().getFileName().toString().toUpperCase(Locale.ROOT));
        ReaderRun run = new ReaderRun(folder);

        run.read(source, Files.readAllBytes(kept), kept.getFileName().toString(), 0);

        assertThat(run.faults()).isEmpty();
    }

    static List<Path> inputsThatOnceFailedAreReadWithoutAFault() throws IOException {
        try (Stream<Path> all = Files.walk(KEPT)) {
            return all.filter(Files::isRegularFile)
                    .filter(each -> !each.getParent().equals(KEPT))
                    .sorted()
                    .toList();
        }
    }
}
