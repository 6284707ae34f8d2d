package evenrise.solver.cli;

import evenrise.solver.app.Jobs;
import evenrise.solver.app.SizeRequest;
import evenrise.solver.app.SizeResult;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "size",
        header = "Propose breakers, cables, feeders and transformers.",
        description = "Tries standard sizes from the least up, by the checks of the electrical review, and proposes the"
                + " first that none of them speaks against: by current, voltage drop, disconnection and fault level,"
                + " each told by itself with its arithmetic. Writes nothing: whoever takes a proposal over types it"
                + " into the project. Without PLAN feeders are not sized, and branches by current alone.",
        footer = {
            "%nExamples:",
            "  evenrise size hall.project.json hall.plan.json",
            "  evenrise size hall.project.json hall.plan.json --all        the arithmetic of every place",
            "  evenrise size hall.project.json hall.plan.json --of AMP-12  of one load, panel or node",
            "  evenrise size hall.project.json hall.plan.json --json > sizes.json"
        })
final class SizeCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Jobs jobs;

    @Parameters(index = "0", paramLabel = "PROJECT", description = "Project file; - reads standard input.")
    private String project;

    @Parameters(
            index = "1",
            arity = "0..1",
            paramLabel = "PLAN",
            description = "Plan file, which says what hangs on which panel; - reads standard input.")
    private String plan;

    @Option(names = "--of", paramLabel = "ID", description = "Tell of this load, panel or node alone.")
    private String place;

    @Option(names = "--all", description = "Show the arithmetic of what is proposed as it is stated, too.")
    private boolean all;

    @Option(names = "--json", description = "Write every proposal with its arithmetic as JSON.")
    private boolean asJson;

    SizeCommand(Terminal terminal, Jobs jobs) {
        this.terminal = terminal;
        this.jobs = jobs;
    }

    @Override
    public Integer call() {
        SizeRequest request = new SizeRequest(
                terminal.source(project), Optional.ofNullable(plan).map(terminal::source), Optional.ofNullable(place));
        SizeResult result = jobs.size(request, ProgressView.control(terminal));
        terminal.print(terminal.out(), asJson ? List.of(result.json()) : result.text(terminal.outStyle(all)));
        return ExitCode.DONE;
    }
}
