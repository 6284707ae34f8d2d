package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever stands in the project's place, the command says what is wrong, shows no stack and writes nothing. */
class BadInputTest {
    @TempDir
    private Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"plan", "audit"})
    void namesAMissingFile(String command) {
        assertRefused(command, folder.resolve("none.json"), "none.json");
    }

    @ParameterizedTest
    @ValueSource(strings = {"plan", "audit"})
    void refusesAFolder(String command) {
        assertRefused(command, folder, "directory");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "   \n", "{", "[]", "null", "{\"format\": 3}", "\u0000\u0001\u0002", "a: &a [*a, *a]"})
    void refusesWhatIsNoProject(String content) throws IOException {
        assertRefused("plan", Files.writeString(folder.resolve("p"), content), "evenrise: ");
    }

    @Test
    void refusesAYamlThatBlowsUp() throws IOException {
        StringBuilder bomb = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x]\n");
        for (int i = 1; i < 12; i++) {
            bomb.append("a%d: &a%d [%s]\n".formatted(i, i, ("*a" + (i - 1) + ", ").repeat(9) + "x"));
        }

        assertRefused("plan", Files.writeString(folder.resolve("p.yaml"), bomb), "evenrise: ");
    }

    @Test
    void listsEveryProblemWithItsPlace() throws IOException {
        Path file = Files.writeString(
                folder.resolve("p.json"),
                SmallHall.PROJECT
                        .replace("\"rated_a\": 225", "\"rated_a\": -1")
                        .replace("\"amplifier\"", "\"amplifyer\""));

        Shell.Result result = assertRefused("plan", file, "line 5");

        assertThat(result.err()).contains("/panels/0/rated_a", "/loads/1/role", "line 10");
    }

    @Test
    void showsNoEscapeOfANameOnTheScreen() throws IOException {
        String name = "amp\\u001b]0;owned\\u0007\\u202e\\nevenrise: done";
        Path file = Files.writeString(
                folder.resolve("p.json"),
                SmallHall.PROJECT.replace("\"amp\"", "\"" + name + "\"").replace("32", "0"));

        Shell.Result result = assertRefused("plan", file, "breaker_a");

        assertThat(result.err()).doesNotContain("\u001b", "\u0007", "\u202e").doesNotContain("\nevenrise: done");
    }

    private Shell.Result assertRefused(String command, Path file, String says) {
        String[] arguments = command.equals("plan")
                ? new String[] {command, file.toString()}
                : new String[] {command, file.toString(), file.toString()};

        Shell.Result result = new Shell(SmallHall.sound()).run(arguments);

        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(result.err()).contains(says).doesNotContain("Exception", "\tat ");
        assertThat(result.out()).isEmpty();
        return result;
    }
}
