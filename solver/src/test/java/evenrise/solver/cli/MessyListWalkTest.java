package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import evenrise.model.file.MappingFile;
import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.intake.Mapping;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Referee;
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

/** The page's commands and corrections, word by word, from the list to a plan that keeps every hard rule. */
@DisplayName("The walk from a messy list to a plan")
class MessyListWalkTest {
    private static final Path PAGE = Path.of("..", "docs", "from-an-equipment-list.md");
    private static final Path DATASET = Path.of("..", "datasets", "heron-wharf");

    /** A command to run, or lines that take the place of those of the mapping that begin alike. */
    private static final Pattern STEP =
            Pattern.compile("```\n(?<command>evenrise [^`]+)\n```|```yaml\n(?<lines>[^`]+)```");

    @TempDir
    private Path folder;

    private String run(String command) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Terminal terminal = new Terminal(
                new ByteArrayInputStream(new byte[0]), out, err, StandardCharsets.UTF_8, false, false, false);
        String[] words = command.replace("datasets/", "../datasets/")
                .replaceAll("(?<=\\s)(heron[a-z.]*)", folder.resolve("$1") + "")
                .replaceAll("\"Heron Wharf\"", "Heron_Wharf")
                .split("\\s+");
        String[] arguments = Arrays.stream(words)
                .skip(1)
                .map(word -> word.equals("Heron_Wharf") ? "Heron Wharf" : word)
                .toArray(String[]::new);
        int code = Evenrise.run(terminal, new Jobs(), arguments);
        if (code != ExitCode.DONE) {
            fail(command + " ended with " + code + ": " + out.toString(StandardCharsets.UTF_8)
                    + err.toString(StandardCharsets.UTF_8));
        }
        return out.toString(StandardCharsets.UTF_8);
    }

    /** What a person does in an editor: a line that begins as one of the mapping does takes its place. */
    private void correct(String lines) throws IOException {
        Path mapping = folder.resolve("heron.yaml");
        String text = Files.readString(mapping);
        for (String line : lines.lines().toList()) {
            Matcher reading = Pattern.compile("( *- \\{.*written: [^,]+,).*").matcher(line);
            assertThat(reading.matches()).as(line).isTrue();
            String begins = Pattern.quote(reading.group(1)) + "[^\n]*";
            assertThat(Pattern.compile("(?m)^" + begins).matcher(text).results().count())
                    .as(line)
                    .isEqualTo(1);
            text = text.replaceFirst("(?m)^" + begins, Matcher.quoteReplacement(line));
        }
        Files.writeString(mapping, text);
    }

    @Test
    void endsInAPlanThatKeepsEveryRule() throws IOException {
        String page = Files.readString(PAGE);
        String walk = page.substring(page.indexOf("## A messy list"), page.indexOf("## What is read"));
        Matcher step = STEP.matcher(walk);
        StringBuilder printed = new StringBuilder();
        while (step.find()) {
            if (step.group("command") != null) {
                printed.append(run(step.group("command")));
            } else {
                correct(step.group("lines"));
            }
        }

        Mapping corrected =
                MappingFile.read(folder.resolve("heron.yaml")).value().orElseThrow();
        assertThat(corrected)
                .isEqualTo(MappingFile.read(DATASET.resolve("corrected.yaml"))
                        .value()
                        .orElseThrow());
        Project project =
                ProjectFile.read(folder.resolve("heron.project.json")).value().orElseThrow();
        assertThat(project)
                .isEqualTo(ProjectFile.read(DATASET.resolve("project.json"))
                        .value()
                        .orElseThrow());
        Plan plan = PlanFile.read(folder.resolve("heron.plan.json"), project)
                .value()
                .orElseThrow();
        assertThat(Referee.judge(project, plan).violations()).isEmpty();
        assertThat(printed.toString()).contains("pieces of 190 left out");
    }
}
