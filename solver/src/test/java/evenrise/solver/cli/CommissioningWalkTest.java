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
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Its commands, one after another, and what they print; written anew by -Devenrise.refresh=true. */
@DisplayName("The walk from a plan to the record of the plant as built")
@Tag("slow")
class CommissioningWalkTest {
    private static final Path PAGE = Path.of("..", "docs", "commissioning.md");
    private static final String SITE = "../datasets/lantern-yard/site/";

    /** A command to run, or an excerpt of what the last one printed. */
    private static final Pattern STEP = Pattern.compile(
            "```\n(?<command>evenrise [^`]+)\n```|<!-- prints from \"(?<from>[^\"]+)\" to \"(?<to>[^\"]+)\" -->\n```\n[^`]*```");

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
                .replaceAll("(?<= )(sheets|as-built)", Matcher.quoteReplacement(folder + "/") + "$1")
                .split(" ");
        Evenrise.run(terminal, new Jobs(), Arrays.copyOfRange(words, 1, words.length));
        return out.toString(StandardCharsets.UTF_8);
    }

    @Test
    void isWhatItsCommandsPrintFromSheetsAndFromTheFilledWorkbook() throws IOException {
        String page = Files.readString(PAGE);
        StringBuilder expected = new StringBuilder();
        Matcher step = STEP.matcher(page);
        String printed = "";
        while (step.find()) {
            if (step.group("command") != null) {
                printed = run(step.group("command"));
                if (step.group("command").contains("site/commissioning.csv")) {
                    assertThat(untilWritten(run(fromTheWorkbook(step.group("command")))))
                            .isEqualTo(untilWritten(printed));
                }
                continue;
            }
            String from = step.group("from");
            String to = step.group("to");
            step.appendReplacement(
                    expected,
                    Matcher.quoteReplacement("<!-- prints from \"" + from + "\" to \"" + to + "\" -->\n```\n"
                            + CampusWalkTest.excerpt(printed, from, to) + "\n```"));
        }
        step.appendTail(expected);

        if (Boolean.getBoolean("evenrise.refresh")) {
            Files.writeString(PAGE, expected);
        }
        assertThat(Files.readString(PAGE)).isEqualTo(expected.toString());
    }

    /** The same readings in the workbook that the plan was handed out as. */
    private String fromTheWorkbook(String command) throws IOException {
        Path filled = folder.resolve("sheets-filled.xlsx");
        FilledWorkbook.write(
                folder.resolve("sheets/plan.xlsx"), filled, Path.of(SITE), "commissioning", "tests", "meters");
        return command.replaceAll("( datasets/\\S+/site/\\S+)+", " sheets-filled.xlsx")
                .replace("-o as-built", "-o as-built-workbook");
    }

    private static String untilWritten(String printed) {
        return printed.substring(0, printed.indexOf("\nWritten:"));
    }
}
