package evenrise.solver.packages;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program as it is handed out, with and without the part that proves bounds. */
class PackageIT {
    private static final Path DEMO = Path.of("..", "datasets", "lantern-yard").toAbsolutePath();
    private static final String WITHOUT_PROOFS = "nothing is proven beyond the usual bounds";
    private static final long MOST_BYTES_WITHOUT_PROOFS = 35_000_000;
    private static final long MOST_BYTES_WITH_PROOFS = 63_000_000;
    private static final long MOST_BYTES_OF_THE_GRID = 16_000_000;

    @TempDir
    private Path folder;

    @Test
    void isSmall() throws IOException {
        long proofs = Files.size(Parts.proofs());
        long program = Files.size(Parts.PROGRAM);
        try (var beside = Files.list(Parts.LIB)) {
            for (Path jar : beside.filter(file -> !isProofs(file) && !file.equals(Parts.GRID))
                    .toList()) {
                program += Files.size(jar);
            }
        }

        assertThat(program).isLessThan(MOST_BYTES_WITHOUT_PROOFS);
        assertThat(program + proofs).isLessThan(MOST_BYTES_WITH_PROOFS);
        assertThat(Files.size(Parts.GRID)).isLessThan(MOST_BYTES_OF_THE_GRID);
    }

    @Test
    void carriesItsOwnPapers() throws IOException {
        assertThat(Parts.names(Parts.PROGRAM))
                .contains(
                        "META-INF/LICENSE",
                        "META-INF/NOTICE",
                        "META-INF/changelog.md",
                        "META-INF/sbom/evenrise.cdx.json");
        assertThat(Parts.entry(Parts.PROGRAM, "META-INF/LICENSE"))
                .isEqualTo(Files.readAllBytes(Path.of("..", "LICENSE")));
        assertThat(Parts.entry(Parts.PROGRAM, "META-INF/NOTICE"))
                .isEqualTo(Files.readAllBytes(Path.of("..", "NOTICE")));
    }

    @Test
    void plansWithoutTheProofsAndSaysSoOnce() throws Exception {
        String said = plan(copy(false));

        assertThat(said).containsOnlyOnce(WITHOUT_PROOFS);
        assertThat(Parts.names(Parts.PROGRAM)).noneMatch(name -> name.startsWith("evenrise/solver/exact/"));
    }

    @Test
    void provesWithThem() throws Exception {
        String said = plan(copy(true));

        assertThat(said).doesNotContain(WITHOUT_PROOFS, "nothing is proven");
    }

    private Path copy(boolean withProofs) throws IOException {
        Path lib = Files.createDirectory(folder.resolve("lib"));
        Files.copy(Parts.PROGRAM, folder.resolve("evenrise.jar"));
        try (var beside = Files.list(Parts.LIB)) {
            for (Path jar : beside.filter(file -> withProofs || !isProofs(file)).toList()) {
                Files.copy(jar, lib.resolve(jar.getFileName()));
            }
        }
        return folder.resolve("evenrise.jar");
    }

    private String plan(Path jar) throws IOException, InterruptedException {
        Path said = folder.resolve("said.txt");
        Path plan = folder.resolve("found.plan.json");
        Process process = new ProcessBuilder(new ArrayList<>(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-jar",
                        jar.toString(),
                        "plan",
                        DEMO.resolve("project.json").toString(),
                        "--moves",
                        "2000",
                        "--threads",
                        "1",
                        "-o",
                        plan.toString())))
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start();
        try {
            assertThat(process.waitFor(5, TimeUnit.MINUTES)).isTrue();
        } finally {
            process.destroyForcibly();
        }
        assertThat(process.exitValue())
                .as("a plan of so few moves may break rules: " + Files.readString(said))
                .isIn(0, 4, 6);
        assertThat(plan).isNotEmptyFile();
        return Files.readString(said).replaceAll("\\s+", " ");
    }

    private static boolean isProofs(Path file) {
        return file.getFileName().toString().startsWith("evenrise-proofs-");
    }
}
