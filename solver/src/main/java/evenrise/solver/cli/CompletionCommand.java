package evenrise.solver.cli;

import java.util.List;
import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

@Command(
        name = "completion",
        header = "Print a script that completes commands and options in bash and zsh.",
        description = "Load it in a shell, or in the file that the shell reads when it starts.",
        footer = {
            "%nExample, for the shell at hand:",
            "  alias evenrise='java -jar /opt/evenrise/evenrise.jar'",
            "  source <(evenrise completion)"
        })
final class CompletionCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Spec
    private CommandSpec spec;

    CompletionCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        String script = AutoComplete.bash(spec.root().name(), spec.root().commandLine());
        terminal.print(terminal.out(), List.of(script.stripTrailing()));
        return ExitCode.DONE;
    }
}
