package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.app.FileSchema;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class EvenriseTest {
    private final Shell shell = new Shell(SmallHall.sound());

    @ParameterizedTest
    @ValueSource(
            strings = {
                "plan",
                "desk",
                "audit",
                "explain",
                "whatif",
                "size",
                "diff",
                "pin",
                "unpin",
                "export",
                "rehearse",
                "observe",
                "commission",
                "rework",
                "import",
                "compare",
                "portfolio",
                "offer",
                "worker",
                "bill",
                "catalogue",
                "report",
                "generate",
                "schema",
                "completion"
            })
    void helpsWithEveryCommand(String command) {
        Shell.Result result = shell.run(command, "--help");

        assertThat(result.code()).isEqualTo(ExitCode.DONE);
        assertThat(result.out()).contains("evenrise " + command, "Example", "Exit codes:");
        assertThat(result.err()).isEmpty();
        assertThat(result.out().lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
    }

    @Test
    void helpNamesEveryCommandAndTheCaution() {
        assertThat(shell.run("--help").out())
                .contains("plan", "audit", "schema", "completion", "licensed professional");
    }

    @ParameterizedTest
    @ValueSource(strings = {"--version", "plan --version", "audit --version"})
    void saysItsVersion(String arguments) {
        assertThat(shell.run(arguments.split(" ")).out()).matches("evenrise \\S+\n");
    }

    @Test
    void wantsACommand() {
        Shell.Result result = shell.run();

        assertThat(result.code()).isEqualTo(ExitCode.USAGE);
        assertThat(result.err()).contains("no command is given", "evenrise --help");
    }

    @Test
    void suggestsTheCommandThatWasProbablyMeant() {
        Shell.Result result = shell.run("plann");

        assertThat(result.code()).isEqualTo(ExitCode.USAGE);
        assertThat(result.err()).contains("maybe plan");
    }

    @Test
    void showsNoEscapeOfAnArgumentOnTheScreen() {
        Shell.Result result = shell.run("plan", "--\u001b[2J");

        assertThat(result.code()).isEqualTo(ExitCode.USAGE);
        assertThat(result.err()).doesNotContain("\u001b");
    }

    @ParameterizedTest
    @EnumSource(FileSchema.class)
    void printsTheSchemaOfEachFile(FileSchema file) {
        Shell.Result result = shell.run("schema", file.toString());

        assertThat(result.code()).isEqualTo(ExitCode.DONE);
        assertThat(result.out()).isEqualTo(file.text());
    }

    @Test
    void knowsNoOtherSchema() {
        assertThat(shell.run("schema", "panel").code()).isEqualTo(ExitCode.USAGE);
    }

    @Test
    void coloursOnlyWhereColourIsWantedAndKnown() {
        assertThat(Terminal.mayColour(Map.of("TERM", "xterm"))).isTrue();
        assertThat(Terminal.mayColour(Map.of("TERM", "xterm", "NO_COLOR", "1"))).isFalse();
        assertThat(Terminal.mayColour(Map.of("TERM", "dumb"))).isFalse();
        assertThat(Terminal.mayColour(Map.of())).isFalse();
    }

    @Test
    void printsACompletionScriptThatKnowsTheOptions() {
        assertThat(shell.run("completion").out()).startsWith("#!").contains("--threads", "audit");
    }
}
