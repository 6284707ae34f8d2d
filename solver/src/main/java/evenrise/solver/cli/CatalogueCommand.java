package evenrise.solver.cli;

import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.Source;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "catalogue",
        header = "Write prices as a table that many bids share.",
        description =
                "Writes a project's catalogue and the prices of its board types as one table, .csv or .xlsx by the"
                        + " file's ending; compare, bill and offer take it by --catalogue. --template writes rows that show how one is"
                        + " filled in.",
        footer = {
            "%nExamples:",
            "  evenrise catalogue --template prices.xlsx",
            "  evenrise catalogue hall.project.json -o prices.csv",
            "  evenrise compare next.project.json --catalogue prices.csv -o estimate"
        })
final class CatalogueCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Jobs jobs;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "PROJECT",
            description = "Project file with a catalogue; - reads standard input.")
    private String project;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE",
            description = "Where its prices go, .csv or .xlsx.")
    private String output;

    @Option(
            names = "--template",
            paramLabel = "FILE",
            description = "Write a table there that shows how prices are stated, and nothing else.")
    private String template;

    CatalogueCommand(Terminal terminal, Jobs jobs) {
        this.terminal = terminal;
        this.jobs = jobs;
    }

    @Override
    public Integer call() {
        if ((template == null) == (project == null || output == null)) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST, "say PROJECT and where its prices go (-o FILE), or --template FILE.");
        }
        String file = template == null ? output : template;
        jobs.prices(Optional.ofNullable(template == null ? project : null).map(terminal::source), Source.path(file));
        terminal.print(terminal.out(), List.of("Written: " + file));
        return ExitCode.DONE;
    }
}
