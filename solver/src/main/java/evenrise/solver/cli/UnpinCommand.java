package evenrise.solver.cli;

import evenrise.solver.app.Jobs;
import evenrise.solver.app.PinRequest;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

@Command(
        name = "unpin",
        header = "Set free what is pinned.",
        description = "Writes the project without what is fixed of these loads: of a panel, panel and slot; of a board,"
                + " board, output and time; of a group or load, all of it.",
        footer = {
            "%nExamples:",
            "  evenrise unpin held.project.json --panel P1 -o hall.project.json",
            "  evenrise unpin held.project.json --all -o hall.project.json"
        })
final class UnpinCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Jobs jobs;

    @Parameters(index = "0", paramLabel = "PROJECT", description = "Project file; - reads standard input.")
    private String project;

    @Mixin
    private PinOptions options;

    UnpinCommand(Terminal terminal, Jobs jobs) {
        this.terminal = terminal;
        this.jobs = jobs;
    }

    @Override
    public Integer call() {
        PinRequest request =
                new PinRequest(terminal.source(project), Optional.empty(), options.which(), false, options.into());
        terminal.print(terminal.out(), options.told(jobs.pin(request)));
        return ExitCode.DONE;
    }
}
