package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Digits, letters, decimal marks, time zone and alphabet of the machine change nothing that is written. */
@Tag("slow")
class AnyMachineTest {
    @TempDir
    private static Path folder;

    private static TreeMap<String, String> usual;

    @BeforeAll
    static void writeOnTheUsualMachine() throws Exception {
        write(folder.resolve("usual"), List.of());
        usual = contents(folder.resolve("usual"));
    }

    @ParameterizedTest
    @CsvSource({
        "ar, EG, Africa/Cairo, UTF-8",
        "tr, TR, Pacific/Apia, US-ASCII",
        "de, CH, America/St_Johns, ISO-8859-1",
        "hi, IN, Asia/Kolkata, UTF-16"
    })
    void writesTheSameBytes(String language, String country, String zone, String encoding) throws Exception {
        List<String> here = List.of(
                "-Duser.language=" + language,
                "-Duser.country=" + country,
                "-Duser.extensions=u-nu-arab",
                "-Duser.timezone=" + zone,
                "-Dfile.encoding=" + encoding);

        write(folder.resolve(language), here);

        assertThat(contents(folder.resolve(language))).isEqualTo(usual);
    }

    private static void write(Path to, List<String> machine) throws Exception {
        Files.createDirectories(to);
        Path project = to.resolve("project.json");
        run(machine, "generate", "--panels", "1", "-o", project.toString());
        run(
                machine,
                "plan",
                project.toString(),
                "--moves",
                "300",
                "--threads",
                "1",
                "-o",
                to.resolve("p.json").toString());
        run(
                machine,
                "report",
                project.toString(),
                to.resolve("p.json").toString(),
                "--date",
                "2026-01-02",
                "--format",
                "html,xlsx,csv",
                "-o",
                to.resolve("documents").toString());
    }

    private static void run(List<String> machine, String... arguments) throws Exception {
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1"));
        command.addAll(machine);
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), Evenrise.class.getName()));
        command.addAll(List.of(arguments));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(said).isIn(ExitCode.DONE, ExitCode.RULES_BROKEN, 6);
    }

    private static TreeMap<String, String> contents(Path folder) throws IOException {
        TreeMap<String, String> contents = new TreeMap<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path each : files.filter(Files::isRegularFile).toList()) {
                contents.put(
                        folder.relativize(each).toString(),
                        new String(Files.readAllBytes(each), StandardCharsets.ISO_8859_1));
            }
        }
        return contents;
    }
}
