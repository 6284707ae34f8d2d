package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What is handed out is the packed jar, and its packing leaves out what seems not to be needed. Only the jar, in a
 * process of its own, shows that nothing is missed: the other tests have the whole libraries at hand.
 */
class PackagedJarIT {
    private static final Path JAR = Path.of("target", "evenrise.jar").toAbsolutePath();
    private static final Path DEMO = Path.of("..", "datasets", "lantern-yard").toAbsolutePath();

    private static final String HEBREW = "מגבר במה";
    private static final String ARABIC = "مكبر المسرح";
    private static final String CYRILLIC = "Усилитель сцены";
    private static final String CHINESE = "舞台 A";

    /** Letters that run from the right, are joined, or may have no font. */
    private static final Map<String, String> RENAMED =
            Map.of("Backline", HEBREW, "Hazer", ARABIC, "Mixing desk", CYRILLIC, "Screen processor", CHINESE);

    private static final List<String> TABLES = List.of(
            "circuits",
            "landing",
            "settings",
            "steps",
            "balance",
            "range",
            "groups",
            "emergency",
            "peak",
            "review",
            "events",
            "bill",
            "commissioning",
            "labels",
            "unstated",
            "percentiles",
            "differences");

    @TempDir
    private Path folder;

    @Test
    void writesEveryDocumentInEveryAlphabet() throws Exception {
        Path project = renamedDemo();
        Path found = folder.resolve("found.plan.json");
        Path documents = folder.resolve("documents");

        assertThat(run("plan", project.toString(), "--moves", "2000", "--threads", "1", "-o", found.toString()))
                .as("a plan of so few moves may break rules")
                .isIn(0, 4);
        assertThat(run(
                        "report",
                        project.toString(),
                        DEMO.resolve("built.plan.json").toString(),
                        "--against",
                        found.toString(),
                        "--trials",
                        "20",
                        "-o",
                        documents.toString()))
                .isZero();

        for (String table : TABLES) {
            assertThat(documents.resolve(table + ".csv")).isNotEmptyFile();
        }
        assertThat(documents.resolve("circuits.csv")).content().contains(RENAMED.values());
        assertThat(documents.resolve("plan.html")).content().contains(RENAMED.values());
        assertThat(texts(documents.resolve("plan.xlsx")))
                .contains(RENAMED.values().toArray(String[]::new));
        assertThat(print(documents.resolve("plan-a4.pdf"))).contains(HEBREW, ARABIC, CYRILLIC);
        assertThat(print(documents.resolve("plan-letter.pdf"))).contains(HEBREW, ARABIC, CYRILLIC);
    }

    /** Every solver that proofs call is in the jar: one that is missing ends them all. */
    @Test
    void provesWhatTheSolversProve() throws Exception {
        String project = DEMO.resolve("project.json").toString();
        String found = folder.resolve("proven.plan.json").toString();

        assertThat(run("plan", project, "--moves", "20000", "--threads", "1", "-o", found))
                .isIn(0, 4);

        assertThat(folder.resolve("said.txt"))
                .content()
                .contains("Proven lower bound")
                .doesNotContain("proofs ended early");
    }

    private Path renamedDemo() throws IOException {
        String text = Files.readString(DEMO.resolve("project.json"));
        for (Map.Entry<String, String> entry : RENAMED.entrySet()) {
            String named = "\"name\": \"" + entry.getKey() + "\"";
            assertThat(text).contains(named);
            text = text.replace(named, "\"name\": \"" + entry.getValue() + "\"");
        }
        return Files.writeString(folder.resolve("project.json"), text);
    }

    private int run(String... arguments) throws IOException, InterruptedException {
        Path said = folder.resolve("said.txt");
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-jar", JAR.toString()));
        command.addAll(List.of(arguments));
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start();
        try {
            assertThat(process.waitFor(5, TimeUnit.MINUTES)).isTrue();
        } finally {
            process.destroyForcibly();
        }
        assertThat(said).content().doesNotContain("a bug");
        return process.exitValue();
    }

    /** Letters that are drawn joined are told as those that they are made of. */
    private static String print(Path file) throws IOException {
        try (PDDocument pdf = Loader.loadPDF(file.toFile())) {
            return Normalizer.normalize(new PDFTextStripper().getText(pdf), Normalizer.Form.NFKC)
                    .replaceAll("\\s+", " ");
        }
    }

    private static List<String> texts(Path file) throws IOException {
        List<String> texts = new ArrayList<>();
        try (InputStream in = Files.newInputStream(file);
                ReadableWorkbook book = new ReadableWorkbook(in)) {
            for (var sheet : book.getSheets().toList()) {
                sheet.read().forEach(row -> row.forEach(cell -> texts.add(cell == null ? "" : cell.getText())));
            }
        }
        return texts;
    }
}
