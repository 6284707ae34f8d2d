package evenrise.solver.cli;

import evenrise.solver.app.DiffRequest;
import evenrise.solver.app.Jobs;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "diff",
        header = "Say what is another in one plan than in an earlier one.",
        description = "Panel by panel: loads that sit elsewhere, have another output, are new or gone; boards that are"
                + " set otherwise; and the figures that both files state.",
        footer = {
            "%nExamples:",
            "  evenrise diff issued.plan.json hall.plan.json",
            "  evenrise diff issued.plan.json hall.plan.json --all     with loads that come on at another time alone"
        })
final class DiffCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Jobs jobs;

    @Parameters(index = "0", paramLabel = "EARLIER", description = "Plan file; - reads standard input.")
    private String earlier;

    @Parameters(index = "1", paramLabel = "LATER", description = "Plan file; - reads standard input.")
    private String later;

    @Option(names = "--all", description = "Show long lists in full, and loads that differ in their time alone.")
    private boolean all;

    DiffCommand(Terminal terminal, Jobs jobs) {
        this.terminal = terminal;
        this.jobs = jobs;
    }

    @Override
    public Integer call() {
        DiffRequest request = new DiffRequest(terminal.source(earlier), terminal.source(later));
        terminal.print(terminal.out(), jobs.diff(request).text(terminal.outStyle(all)));
        return ExitCode.DONE;
    }
}
