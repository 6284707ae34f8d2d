package evenrise.solver.cli;

import evenrise.solver.app.Jobs;
import evenrise.solver.app.PinRequest;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "pin",
        header = "Keep parts of a plan as they are in whatever is planned next.",
        description =
                "Writes the project with what the plan says of these loads as fixed: panel and slot, board and output,"
                        + " and with --times when they come on. A later plan keeps them, by the rule fixed.",
        footer = {
            "%nExamples:",
            "  evenrise pin hall.project.json issued.plan.json --all --times -o issued.project.json",
            "  evenrise pin hall.project.json hall.plan.json --panel P1 --board B3 -o held.project.json"
        })
final class PinCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Jobs jobs;

    @Parameters(index = "0", paramLabel = "PROJECT", description = "Project file; - reads standard input.")
    private String project;

    @Parameters(index = "1", paramLabel = "PLAN", description = "Plan of it; - reads standard input.")
    private String plan;

    @Option(names = "--times", description = "Keep their switch-on times, too.")
    private boolean times;

    @Mixin
    private PinOptions options;

    PinCommand(Terminal terminal, Jobs jobs) {
        this.terminal = terminal;
        this.jobs = jobs;
    }

    @Override
    public Integer call() {
        PinRequest request = new PinRequest(
                terminal.source(project), Optional.of(terminal.source(plan)), options.which(), times, options.into());
        terminal.print(terminal.out(), options.told(jobs.pin(request)));
        return ExitCode.DONE;
    }
}
