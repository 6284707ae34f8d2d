package evenrise.solver.cli;

import evenrise.solver.app.ExportRequest;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.Source;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "export",
        header = "Write a project as tables to edit, or for other programs.",
        description =
                "By the ending of what is written: a workbook (.xlsx) with a sheet for loads, panels, boards, groups"
                        + " and what else the project has; the same as tables of values in a folder, for a name without an"
                        + " ending; or the project again. 'evenrise import --into' takes edited tables in. With --resolved every"
                        + " load states all that it has, defaults applied, for programs that know no defaults.",
        footer = {
            "%nExamples:",
            "  evenrise export hall.project.json -o loads.xlsx",
            "  evenrise export hall.project.json --resolved -o resolved.project.json",
            "  evenrise export hall.project.json -o hall.yaml"
        })
final class ExportCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Jobs jobs;

    @Parameters(index = "0", paramLabel = "PROJECT", description = "Project file; - reads standard input.")
    private String project;

    @Option(names = "--resolved", description = "Apply the project's defaults: every load states all that it has.")
    private boolean resolved;

    @Option(
            names = {"-o", "--output"},
            required = true,
            paramLabel = "FILE",
            description = "What to write: .xlsx, a folder, .yaml, else JSON.")
    private String output;

    ExportCommand(Terminal terminal, Jobs jobs) {
        this.terminal = terminal;
        this.jobs = jobs;
    }

    @Override
    public Integer call() {
        ExportRequest request = new ExportRequest(terminal.source(project), resolved, Source.path(output));
        terminal.print(
                terminal.out(),
                jobs.export(request, ProgressView.control(terminal)).written());
        return ExitCode.DONE;
    }
}
