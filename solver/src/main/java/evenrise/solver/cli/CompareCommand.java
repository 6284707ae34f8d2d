package evenrise.solver.cli;

import evenrise.solver.app.CompareRequest;
import evenrise.solver.app.CompareResult;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.Source;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
        name = "compare",
        header = "Compare numbers of panels and boards for an estimate.",
        description = {
            "Lists what panels and boards of the catalogue the project can be built of, in order of price, and seeks the"
                    + " cheapest that stands: each is ruled out by counting, shown to stand by a plan, or told as"
                    + " undecided. Then plans each number of panels and boards in the ranges for three aims, and shows"
                    + " the front of price against peak inrush against sequence time.",
            "make-ups.csv in the folder has the list at once. Every plan is there with its project. A second run goes on"
                    + " where an interrupted one ended."
        },
        footer = {
            "%nExamples:",
            "  evenrise compare hall.project.json -o estimate",
            "  evenrise compare hall.project.json -o estimate --panels 3..6 --boards 6..14 --moves 200000",
            "  evenrise compare hall.project.json -o estimate --least-only --tries 200",
            "  evenrise compare hall.project.json -o estimate --least-only --draws 500",
            "  evenrise compare hall.project.json -o estimate --catalogue prices.xlsx",
            "  evenrise compare hall.project.json -o estimate --grid ws1,ws2 --keys keys/desk"
        })
final class CompareCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Jobs jobs;
    private final Interruption interruption;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "PROJECT", description = "Project file with a catalogue, or with --catalogue.")
    private String project;

    @Option(
            names = {"-o", "--output"},
            required = true,
            paramLabel = "FOLDER",
            description = "Where projects, plans, table and chart go.")
    private String output;

    @Option(
            names = "--panels",
            paramLabel = "N..M",
            converter = CountRangeConverter.class,
            description = "Numbers of panels. Default: the least that counting allows, and two more.")
    private CompareRequest.Range panels;

    @Option(
            names = "--boards",
            paramLabel = "N..M",
            converter = CountRangeConverter.class,
            description = "Numbers of boards. Default alike, for each number of panels.")
    private CompareRequest.Range boards;

    @Option(
            names = "--moves",
            paramLabel = "N",
            defaultValue = "" + CompareRequest.USUAL_MOVES,
            description = "Moves of each search. Default: ${DEFAULT-VALUE}.")
    private long moves;

    @Option(
            names = "--tries",
            paramLabel = "N",
            defaultValue = "" + CompareRequest.USUAL_TRIES,
            description = "Make-ups that may be planned to find the least price. Default: ${DEFAULT-VALUE}.")
    private int tries;

    @Option(
            names = "--spare-slots",
            paramLabel = "N",
            description = "Slots that each panel leaves free. Default, as of the other two: the project's, or "
                    + "2 slots, 1 output and 10 %% where it asks for no spare at all.")
    private Integer spareSlots;

    @Option(names = "--spare-outputs", paramLabel = "N", description = "Outputs that each board in use leaves free.")
    private Integer spareOutputs;

    @Option(
            names = "--spare-percent",
            paramLabel = "PERCENT",
            description = "Part of each panel's allowed running current that is left. All three at 0 for no spare.")
    private Double sparePercent;

    @Option(names = "--least-only", description = "Seek the least price alone, without the front.")
    private boolean leastOnly;

    @Option(
            names = "--time",
            paramLabel = "TIME",
            converter = Durations.class,
            description =
                    "End after this time, such as 10m, with what there is by then, and tell what was not looked at.")
    private Duration time;

    @Option(
            names = "--draws",
            paramLabel = "N",
            defaultValue = "0",
            description = "Draw the quantities that the project leaves open so often, and tell the range of prices.")
    private int draws;

    @Option(
            names = "--catalogue",
            paramLabel = "FILE",
            description = "Prices in the place of the project's own, .csv or .xlsx; 'evenrise catalogue' writes one.")
    private String catalogue;

    @Option(names = "--seed", paramLabel = "N", defaultValue = "1", description = "Seed of chance. Default: 1.")
    private long seed;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "Scenarios side by side. Default: one for each processor, at most 8.")
    private Integer threads;

    @Mixin
    private GridOptions grid;

    CompareCommand(Terminal terminal, Jobs jobs, Interruption interruption) {
        this.terminal = terminal;
        this.jobs = jobs;
        this.interruption = interruption;
    }

    @Override
    public Integer call() {
        CompareRequest request = new CompareRequest(
                terminal.source(project),
                Source.path(output),
                Optional.ofNullable(panels),
                Optional.ofNullable(boards),
                BudgetOptions.effort(spec.commandLine(), null, moves, seed, threads),
                Math.max(0, tries),
                spare(),
                leastOnly,
                draws(),
                Optional.ofNullable(catalogue).map(Source::path),
                Optional.ofNullable(time),
                grid.access(spec.commandLine()));
        CompareResult result = jobs.compare(request, ProgressView.control(terminal, false, interruption));
        terminal.print(terminal.out(), result.text(terminal.outStyle(false)));
        terminal.print(
                terminal.out(),
                List.of(
                        "",
                        "Written: estimate.html, estimate.pdf, make-ups.csv, scenarios.csv, "
                                + (draws > 0 ? "draws.csv, " : "") + "front.svg and each plan with its project in "
                                + output));
        if (result.wasCancelled()) {
            return ExitCode.INTERRUPTED;
        }
        return result.isAnySound() ? ExitCode.DONE : ExitCode.RULES_BROKEN;
    }

    private int draws() {
        if (draws < 0 || draws > CompareRequest.MOST_DRAWS) {
            throw new ParameterException(
                    spec.commandLine(), "--draws: expected 0 to " + CompareRequest.MOST_DRAWS + ".");
        }
        return draws;
    }

    /** One that is asked for makes the others 0 where they are not. */
    private Optional<CompareRequest.Spares> spare() {
        if (spareSlots == null && spareOutputs == null && sparePercent == null) {
            return Optional.empty();
        }
        try {
            return Optional.of(new CompareRequest.Spares(
                    spareSlots == null ? 0 : spareSlots,
                    spareOutputs == null ? 0 : spareOutputs,
                    sparePercent == null ? 0 : sparePercent));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), "--spare-…: " + e.getMessage() + ".");
        }
    }
}
