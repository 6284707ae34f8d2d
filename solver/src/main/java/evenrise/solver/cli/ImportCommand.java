package evenrise.solver.cli;

import evenrise.solver.app.ImportAlternatesResult;
import evenrise.solver.app.ImportRequest;
import evenrise.solver.app.ImportResult;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.Source;
import evenrise.solver.app.TakeInRequest;
import evenrise.solver.app.TakeInResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "import",
        header = "Make a project of an equipment list.",
        description = "Reads pieces of equipment from a workbook (.xlsx) or a table of values (.csv), recognises the"
                + " columns by the trade's usual words or by a mapping file, bundles the pieces onto the fewest breakers,"
                + " and sketches a supply, panels and boards for them. A breaker's rating follows what it carries, never"
                + " an inrush. Life-safety equipment is listed as outside the project. Everything that was guessed is"
                + " listed for confirmation; every row that cannot be taken over is listed with its place.",
        footer = {
            "%nExamples:",
            "  evenrise import --template list.xlsx",
            "  evenrise import list.xlsx -o hall.project.json",
            "  evenrise import options.xlsx --alternates -o options",
            "  evenrise import list.xlsx --explain --write-mapping mapping.yaml",
            "  evenrise import --into hall.project.json loads.xlsx --dry-run",
            "  evenrise import list.csv --map mapping.yaml -o hall.project.json --without-bad-rows"
        })
final class ImportCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Jobs jobs;

    @Parameters(index = "0", arity = "0..1", paramLabel = "LIST", description = "Equipment list, .xlsx or .csv.")
    private String list;

    @Option(
            names = "--map",
            paramLabel = "MAPPING",
            description = "File that says how the list is to be read, YAML or JSON.")
    private String map;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE",
            description = "Project file to write, YAML by its ending, else JSON.")
    private String output;

    @Option(names = "--name", paramLabel = "NAME", description = "Name of the project. Default: the list's name.")
    private String name;

    @Option(names = "--without-bad-rows", description = "Write the project without the rows that cannot be taken over.")
    private boolean withoutBadRows;

    @Option(
            names = "--template",
            paramLabel = "FILE",
            description = "Write a blank list there, .xlsx or .csv, and nothing else.")
    private String template;

    @Option(
            names = "--place-life-safety",
            description = "Give life-safety equipment a place in the project, unswitched and each piece alone on its "
                    + "breaker. Ask whoever is responsible for it first.")
    private boolean placesLifeSafety;

    @Option(
            names = "--ignore",
            paramLabel = "HEADER",
            description = "Leave the column with this header alone. May be said several times.")
    private List<String> ignored = List.of();

    @Option(
            names = "--explain",
            description = "Show how each column and each kind of text was read. Without -o nothing is written.")
    private boolean explains;

    @Option(
            names = "--write-mapping",
            paramLabel = "FILE",
            description =
                    "Write a mapping there that says in full how the list was read, ready to edit and to read with"
                            + " again (--map). YAML by its ending, else JSON.")
    private String wholeMapping;

    @Option(
            names = "--into",
            paramLabel = "PROJECT",
            description = "LIST is what 'evenrise export' wrote of this project, edited: take in what is another, and"
                    + " write the project, or -o FILE.")
    private String into;

    @Option(
            names = "--alternates",
            description = "Each sheet of the workbook is an alternate: a project of its own in the folder -o names,"
                    + " instead of all added up.")
    private boolean alternates;

    @Option(names = "--dry-run", description = "With --into: say what is another and write nothing.")
    private boolean dryRun;

    @Option(names = "--all", description = "Show long lists in full.")
    private boolean all;

    ImportCommand(Terminal terminal, Jobs jobs) {
        this.terminal = terminal;
        this.jobs = jobs;
    }

    @Override
    public Integer call() {
        if (template != null) {
            jobs.template(Source.path(template));
            return ExitCode.DONE;
        }
        if (list != null && into != null) {
            return takeIn();
        }
        if (list == null || output == null && !explains && wholeMapping == null) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    "say which LIST to read and where to write (-o or --into), or --explain, --write-mapping FILE or --template"
                            + " FILE.");
        }
        ImportRequest request = new ImportRequest(
                Source.path(list),
                Optional.ofNullable(map).map(Source::path),
                Optional.ofNullable(name),
                Optional.ofNullable(output).map(Source::path),
                withoutBadRows,
                placesLifeSafety,
                ignored,
                Optional.ofNullable(wholeMapping).map(Source::path));
        if (alternates) {
            return alternates(request);
        }
        ImportResult result = jobs.importList(request, ProgressView.control(terminal));
        if (explains) {
            terminal.print(terminal.out(), result.explanation(terminal.outStyle(all)));
            terminal.print(terminal.out(), List.of(""));
        }
        terminal.print(terminal.out(), result.text(terminal.outStyle(all)));
        List<String> written = new ArrayList<>();
        Optional.ofNullable(wholeMapping).ifPresent(written::add);
        if (result.refusal().isEmpty()) {
            Optional.ofNullable(output).ifPresent(written::add);
        }
        if (!written.isEmpty()) {
            terminal.print(terminal.out(), List.of("", "Written: " + String.join(", ", written)));
        }
        result.refusal().ifPresent(why -> {
            throw new JobFailed(JobFailed.Reason.INPUT, why);
        });
        return ExitCode.DONE;
    }

    private int alternates(ImportRequest request) {
        if (output == null || wholeMapping != null || explains) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    "--alternates writes a project for each sheet: say into which folder (-o), without --explain and"
                            + " --write-mapping.");
        }
        ImportAlternatesResult result = jobs.importAlternates(request, ProgressView.control(terminal));
        terminal.print(terminal.out(), result.text(terminal.outStyle(all)));
        result.refusal().ifPresent(why -> {
            throw new JobFailed(JobFailed.Reason.INPUT, why);
        });
        terminal.print(
                terminal.out(), List.of("", "Written: " + String.join(", ", result.written()) + " in " + output));
        return ExitCode.DONE;
    }

    private int takeIn() {
        String written = output == null ? into : output;
        TakeInResult result = jobs.takeIn(
                new TakeInRequest(Source.path(into), Source.path(list), Source.path(written), dryRun),
                ProgressView.control(terminal));
        terminal.print(terminal.out(), result.text(terminal.outStyle(all)));
        terminal.print(terminal.out(), List.of("", result.isWritten() ? "Written: " + written : "Nothing is written."));
        return ExitCode.DONE;
    }
}
