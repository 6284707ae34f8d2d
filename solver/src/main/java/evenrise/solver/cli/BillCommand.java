package evenrise.solver.cli;

import evenrise.solver.app.BillRequest;
import evenrise.solver.app.BillResult;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.Source;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "bill",
        header = "List what a project consists of, with prices.",
        description =
                "Panels, boards, breakers, cables and work, counted, with the prices of the project's catalogue, subtotals "
                        + "and percentages. What has no price is listed without one.",
        footer = {
            "%nExamples:",
            "  evenrise bill hall.project.json",
            "  evenrise bill hall.project.json --csv bill.csv",
            "  evenrise bill hall.project.json --catalogue prices.xlsx"
        })
final class BillCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Jobs jobs;

    @Parameters(index = "0", paramLabel = "PROJECT", description = "Project file; - reads standard input.")
    private String project;

    @Parameters(
            index = "1",
            arity = "0..1",
            paramLabel = "PLAN",
            description =
                    "Plan of it, which says what control leads cross to another panel; it changes no other price.")
    private String plan;

    @Option(
            names = "--catalogue",
            paramLabel = "FILE",
            description = "Prices in the place of the project's own, .csv or .xlsx; 'evenrise catalogue' writes one.")
    private String catalogue;

    @Option(names = "--csv", paramLabel = "FILE", description = "Write the bill there as a table of values, too.")
    private String csv;

    BillCommand(Terminal terminal, Jobs jobs) {
        this.terminal = terminal;
        this.jobs = jobs;
    }

    @Override
    public Integer call() {
        BillResult result = jobs.bill(new BillRequest(
                terminal.source(project),
                Optional.ofNullable(plan).map(terminal::source),
                Optional.ofNullable(catalogue).map(Source::path),
                Optional.ofNullable(csv).map(Source::path)));
        terminal.print(terminal.out(), result.text(terminal.outStyle(true)));
        if (csv != null) {
            terminal.print(terminal.out(), List.of("", "Written: " + csv));
        }
        return ExitCode.DONE;
    }
}
