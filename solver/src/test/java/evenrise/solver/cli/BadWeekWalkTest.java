package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.app.Jobs;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page's command, what it prints, and what stands on its sheets; written anew by -Devenrise.refresh=true. */
@DisplayName("The walk through the bad week")
@Tag("slow")
class BadWeekWalkTest {
    private static final Path PAGE = Path.of("..", "docs", "rework.md");
    private static final Pattern COMMAND = Pattern.compile("```\n(evenrise rework [^`]*week.project.json[^`]+)\n```");

    /** An excerpt of what the command prints, or of a sheet. */
    private static final Pattern EXCERPT = Pattern.compile(
            "(?<mark><!-- (?:prints|sheet (?<sheet>\\d+)) from \"(?<from>[^\"]+)\" to \"(?<to>[^\"]+)\" -->)\n```\n[^`]*```");

    @TempDir
    private Path folder;

    private String run(String command) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Terminal terminal = new Terminal(
                new ByteArrayInputStream(new byte[0]),
                out,
                new ByteArrayOutputStream(),
                StandardCharsets.UTF_8,
                false,
                false,
                false);
        String[] words = command.replace("datasets/", "../datasets/")
                .replaceAll("-o week$", "-o " + Matcher.quoteReplacement(folder.toString()))
                .split(" ");
        int code = Evenrise.run(terminal, new Jobs(), Arrays.copyOfRange(words, 1, words.length));
        assertThat(code).isEqualTo(ExitCode.DONE);
        return out.toString(StandardCharsets.UTF_8);
    }

    /** A cover, and one a stage. */
    private int printedPages(String name) throws IOException {
        try (PDDocument pdf = Loader.loadPDF(folder.resolve(name).toFile())) {
            return pdf.getNumberOfPages();
        }
    }

    @Test
    void isWhatItsCommandPrintsAndItsSheetsSay() throws IOException {
        String page = Files.readString(PAGE);
        Matcher command = COMMAND.matcher(page);
        assertThat(command.find()).isTrue();
        String printed = run(command.group(1));
        String[] sheets = Files.readString(folder.resolve("work.txt")).split("\f");
        assertThat(printedPages("work-a4.pdf")).isEqualTo(1 + sheets.length);
        assertThat(printedPages("work-letter.pdf")).isEqualTo(1 + sheets.length);

        StringBuilder expected = new StringBuilder();
        Matcher excerpt = EXCERPT.matcher(page);
        while (excerpt.find()) {
            String whole =
                    excerpt.group("sheet") == null ? printed : sheets[Integer.parseInt(excerpt.group("sheet")) - 1];
            excerpt.appendReplacement(
                    expected,
                    Matcher.quoteReplacement(excerpt.group("mark") + "\n```\n"
                            + CampusWalkTest.excerpt(whole, excerpt.group("from"), excerpt.group("to")) + "\n```"));
        }
        excerpt.appendTail(expected);

        if (Boolean.getBoolean("evenrise.refresh")) {
            Files.writeString(PAGE, expected);
        }
        assertThat(Files.readString(PAGE)).isEqualTo(expected.toString());
    }
}
