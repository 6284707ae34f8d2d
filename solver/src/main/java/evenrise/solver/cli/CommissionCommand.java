package evenrise.solver.cli;

import evenrise.model.measured.SiteVerdict;
import evenrise.solver.app.CommissionRequest;
import evenrise.solver.app.CommissionResult;
import evenrise.solver.app.DocumentSet;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.Source;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "commission",
        header = "Tell a plant as measured beside its plan.",
        description = {
            "Reads commissioning sheets that 'report' wrote and somebody filled in, as tables of values, as the"
                    + " workbook or on the page readings.html, or a table with the columns load, phase, running_a, idle_a."
                    + " Says what is other than planned, what matters most first, with the likely cause and what to look"
                    + " at; judges limits at measured values; and writes the project with what was measured.",
            "A reading raises what is stated; it lowers it only where --confirm says that the load was in full use."
                    + " A read peak lowers nothing."
        },
        footer = {
            "%nExamples:",
            "  evenrise commission hall.project.json hall.plan.json commissioning.csv tests.csv meters.csv",
            "  evenrise commission hall.project.json hall.plan.json plan.xlsx --into hall.measured.json",
            "  evenrise commission hall.project.json hall.plan.json plan.xlsx --confirm AMP-1,AMP-2",
            "  evenrise commission hall.project.json hall.plan.json plan.xlsx --recording start.csv -o as-built"
        })
final class CommissionCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Jobs jobs;

    @Parameters(index = "0", paramLabel = "PROJECT", description = "Project file.")
    private String project;

    @Parameters(index = "1", paramLabel = "PLAN", description = "Plan file.")
    private String plan;

    @Parameters(
            index = "2..*",
            arity = "0..*",
            paramLabel = "SHEET",
            description = "Filled sheets: .csv, .xlsx, or .json of readings.html. None where --recording is all.")
    private List<String> sheets = List.of();

    @Option(names = "--date", paramLabel = "DAY", description = "Day on which was read what states none: 2026-03-14.")
    private String day;

    @Option(
            names = "--confirm",
            split = ",",
            paramLabel = "LOAD",
            description = "Loads whose readings were at full use: what is stated of them may be lowered.")
    private Set<String> confirmed = Set.of();

    @Option(names = "--confirm-all", description = "The same of all loads with readings.")
    private boolean confirmsAll;

    @Option(names = "--into", paramLabel = "FILE", description = "Write the project with what was measured.")
    private String into;

    @Option(
            names = "--use",
            paramLabel = "NAME",
            description = "Running currents were read in this use of the plant, such as rehearsal: what two visits and"
                    + " more read becomes a scene of the project with what was measured.")
    private String use;

    @Option(names = "--recording", paramLabel = "FILE", description = "A recorded start, as 'observe' reads it.")
    private String recording;

    @Option(names = "--at", paramLabel = "ID", description = "Panel or node that was recorded. Default: the supply.")
    private String at;

    @Option(names = "--system", paramLabel = "ID", description = "System whose command was recorded.")
    private String system;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FOLDER",
            description =
                    "Write the record of the plant as built: report to be signed, differences, open points, project,"
                            + " plan and documents.")
    private String output;

    @Option(
            names = "--revision",
            paramLabel = "TEXT",
            defaultValue = "as built",
            description = "Revision on every page of it. Default: ${DEFAULT-VALUE}.")
    private String revision;

    @Option(
            names = "--force",
            description = "Overwrite files in the folder that no earlier run wrote, or that were changed since.")
    private boolean isForced;

    @Option(names = "--all", description = "Show everything, what is less than stated, too.")
    private boolean isFull;

    CommissionCommand(Terminal terminal, Jobs jobs) {
        this.terminal = terminal;
        this.jobs = jobs;
    }

    @Override
    public Integer call() {
        CommissionResult result = jobs.commission(
                new CommissionRequest(
                        terminal.source(project),
                        terminal.source(plan),
                        sheets.stream().map(Source::path).toList(),
                        Optional.ofNullable(day),
                        confirmed,
                        confirmsAll,
                        Optional.ofNullable(into).map(Source::path),
                        Optional.ofNullable(recording)
                                .map(file -> new CommissionRequest.Recorded(
                                        Source.path(file),
                                        Optional.ofNullable(at),
                                        Optional.ofNullable(system),
                                        List.of())),
                        Optional.ofNullable(output).map(this::record),
                        Optional.ofNullable(use)),
                ProgressView.control(terminal));
        terminal.print(terminal.out(), result.text(terminal.outStyle(isFull)));
        if (into != null) {
            terminal.print(terminal.out(), List.of("", "Written: " + into));
        }
        if (output != null) {
            terminal.print(
                    terminal.out(), List.of("", "Written: " + String.join(", ", result.written()) + " in " + output));
        }
        SiteVerdict verdict = result.plant().verdict();
        return verdict == SiteVerdict.UNSAFE || verdict == SiteVerdict.DIFFERS ? ExitCode.RULES_BROKEN : ExitCode.DONE;
    }

    private DocumentSet record(String folder) {
        DocumentSet usual = DocumentSet.into(Source.path(folder));
        return usual.withImprint(revision, day == null ? usual.date() : day).withOverwriting(isForced);
    }
}
