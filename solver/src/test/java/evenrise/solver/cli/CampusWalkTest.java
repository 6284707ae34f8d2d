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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayName("The walk through the campus")
class CampusWalkTest {
    private static final Path PAGE = Path.of("..", "docs", "campus.md");

    /** A command to run, or an excerpt of what the last one printed. */
    private static final Pattern STEP = Pattern.compile(
            "```\n(?<command>evenrise [^`]+)\n```|<!-- prints from \"(?<from>[^\"]+)\" to \"(?<to>[^\"]+)\" -->\n```\n[^`]*```");

    @TempDir
    private Path folder;

    private String run(String command) {
        ByteArrayOutputStream data = new ByteArrayOutputStream();
        Terminal terminal = new Terminal(
                new ByteArrayInputStream(new byte[0]),
                data,
                new ByteArrayOutputStream(),
                StandardCharsets.UTF_8,
                false,
                false,
                false);
        String[] words = command.replace("datasets/", "../datasets/")
                .replaceAll("(campus\\.plan\\.json|my-campus\\.project\\.json)", folder.resolve("$1") + "")
                .split(" ");
        Evenrise.run(terminal, new Jobs(), Arrays.copyOfRange(words, 1, words.length));
        return data.toString(StandardCharsets.UTF_8);
    }

    static String excerpt(String printed, String from, String to) {
        int begin = ("\n" + printed).indexOf("\n" + from);
        assertThat(begin).as(from).isNotNegative();
        int end = printed.indexOf("\n" + to, begin);
        assertThat(end).as(to).isNotNegative();
        return printed.substring(begin, end).stripTrailing();
    }

    @Test
    void isWhatItsCommandsPrint() throws IOException {
        String page = Files.readString(PAGE);
        StringBuilder expected = new StringBuilder();
        Matcher step = STEP.matcher(page);
        String printed = "";
        while (step.find()) {
            if (step.group("command") != null) {
                printed = run(step.group("command"));
                continue;
            }
            String from = step.group("from");
            String to = step.group("to");
            step.appendReplacement(
                    expected,
                    Matcher.quoteReplacement("<!-- prints from \"" + from + "\" to \"" + to + "\" -->\n```\n"
                            + excerpt(printed, from, to) + "\n```"));
        }
        step.appendTail(expected);

        if (Boolean.getBoolean("evenrise.refresh")) {
            Files.writeString(PAGE, expected);
        }
        assertThat(Files.readString(PAGE)).isEqualTo(expected.toString());
    }
}
