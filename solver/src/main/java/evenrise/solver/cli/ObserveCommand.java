package evenrise.solver.cli;

import evenrise.model.intake.RecorderColumns;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.ObserveRequest;
import evenrise.solver.app.ObserveResult;
import evenrise.solver.app.SaidColumns;
import evenrise.solver.app.Source;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "observe",
        header = "Tell a recorded start beside its plan.",
        description = {
            "Finds the steps in recorded currents, sets the recorder's clock by them, and says of every load whether it"
                    + " came on as planned: at its time, on its phases, with its current. Loads that cannot be told are"
                    + " named as such. docs/commissioning.md says how to record, and what can be told.",
            "The recording is a table of values: a column of times and one of rms currents or of waves for each phase;"
                    + " or COMTRADE. It is of the supply or where --at says, 50 rms values a second or more, from before"
                    + " the command to after the last load. However long it is, it is read in little memory."
        },
        footer = {
            "%nExamples:",
            "  evenrise observe hall.project.json hall.plan.json start.csv",
            "  evenrise observe hall.project.json hall.plan.json dp1.csv --at DP1 --all",
            "  evenrise observe hall.project.json hall.plan.json log.csv --column time=Zeitpunkt --column \"A=Kanal 1\""
        })
final class ObserveCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Jobs jobs;

    @Parameters(index = "0", paramLabel = "PROJECT", description = "Project file.")
    private String project;

    @Parameters(index = "1", paramLabel = "PLAN", description = "Plan file.")
    private String plan;

    @Parameters(
            index = "2",
            paramLabel = "RECORDING",
            description = "Table of values, .csv, or COMTRADE, .cfg beside .dat.")
    private String recording;

    @Option(
            names = "--again",
            paramLabel = "FILE",
            description = "A further recording of the same start at the same place, from its beginning to its end; once"
                    + " for each. Closings and inrush of all are told together.")
    private List<String> again = List.of();

    @Option(names = "--at", paramLabel = "ID", description = "Panel or node that was recorded. Default: the supply.")
    private String at;

    @Option(names = "--system", paramLabel = "ID", description = "System whose command was given.")
    private String system;

    @Option(
            names = "--from",
            paramLabel = "MOMENT",
            description = "Leave out what is before, by the recorder's clock: seconds, or as the recording writes it.")
    private String from;

    @Option(names = "--to", paramLabel = "MOMENT", description = "Leave out what is after, likewise.")
    private String to;

    @Option(
            names = "--column",
            paramLabel = "MEANING=HEADER",
            description =
                    "Which column of a table is what, where its header does not tell: time, A, B or C. Said once, it"
                            + " is kept beside the project and holds for every recording with these headers.")
    private Map<String, String> columns = Map.of();

    @Option(
            names = "--units-per-second",
            paramLabel = "NUMBER",
            description =
                    "With --column: units of plain times that are one second, such as 1000. Default: by the header.")
    private Double unitsPerSecond;

    @Option(
            names = "--amps-per-unit",
            paramLabel = "NUMBER",
            description = "With --column: amperes of one unit of the currents: 0.001, or 100 for a clamp of 10 mV/A"
                    + " in volts. Default: by the header.")
    private Double ampsPerUnit;

    @Option(names = "--all", description = "Show what is as planned, too.")
    private boolean isFull;

    ObserveCommand(Terminal terminal, Jobs jobs) {
        this.terminal = terminal;
        this.jobs = jobs;
    }

    @Override
    public Integer call() {
        ObserveResult result = jobs.observe(
                new ObserveRequest(
                        terminal.source(project),
                        terminal.source(plan),
                        Source.path(recording),
                        Optional.ofNullable(at),
                        Optional.ofNullable(system),
                        Optional.ofNullable(from),
                        Optional.ofNullable(to),
                        columns(),
                        again.stream().map(Source::path).toList()),
                ProgressView.control(terminal));
        terminal.print(terminal.out(), result.text(terminal.outStyle(isFull)));
        if (!result.isRecognised()) {
            return ExitCode.BAD_INPUT;
        }
        return result.isAsPlanned() ? ExitCode.DONE : ExitCode.RULES_BROKEN;
    }

    private Optional<RecorderColumns> columns() {
        if (columns.isEmpty()) {
            if (unitsPerSecond != null || ampsPerUnit != null) {
                throw new JobFailed(
                        JobFailed.Reason.REQUEST,
                        "--units-per-second and --amps-per-unit go with --column, which says of which columns.");
            }
            return Optional.empty();
        }
        return Optional.of(SaidColumns.of(columns, number(unitsPerSecond), number(ampsPerUnit)));
    }

    private static OptionalDouble number(Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
