package evenrise.solver.cli;

import evenrise.solver.app.Effort;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.PortfolioRequest;
import evenrise.solver.app.PortfolioResult;
import evenrise.solver.app.Source;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
        name = "portfolio",
        header = "Plan many projects, variants and seeds in one run.",
        description = {
            "Finds a plan of each project in each variant by each seed, several side by side, and shows what they come"
                    + " to: the best of each, how far seeds are apart, what went wrong. A portfolio file (docs/portfolio.md)"
                    + " names projects, variants and seeds; project files and folders are planned as they are.",
            "Each plan is kept as it is found. The same command goes on where an interrupted one ended, and finds again"
                    + " only what has changed."
        },
        footer = {
            "%nExamples:",
            "  evenrise portfolio halls -o overnight --seeds 1..20",
            "  evenrise portfolio chain.portfolio.json -o overnight",
            "  evenrise portfolio halls -o overnight --seeds 1..20 --grid ws1,ws2 --keys keys/desk"
        })
final class PortfolioCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Jobs jobs;
    private final Interruption interruption;

    @Spec
    private CommandSpec spec;

    @Parameters(
            arity = "1..*",
            paramLabel = "FILE|FOLDER",
            description = "A portfolio file; or project files, and folders of them.")
    private List<String> inputs;

    @Option(
            names = {"-o", "--output"},
            required = true,
            paramLabel = "FOLDER",
            description = "Where plans, table, workbook and page go.")
    private String output;

    @Option(
            names = "--seeds",
            paramLabel = "N..M",
            converter = SeedRangeConverter.class,
            description = "Seeds of chance, each of which gives a plan. Default: what the portfolio file says, or 1.")
    private PortfolioRequest.Seeds seeds;

    @Option(
            names = "--moves",
            paramLabel = "N",
            description = "Moves of each search. Default: what the portfolio file says, or "
                    + PortfolioRequest.USUAL_MOVES + ".")
    private Integer moves;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "Plans searched side by side; changes no plan. Default: one for each processor.")
    private Integer threads;

    @Option(
            names = "--catalogue",
            paramLabel = "FILE",
            description = "Prices in the place of the projects' own, .csv or .xlsx; 'evenrise catalogue' writes one.")
    private String catalogue;

    @Mixin
    private GridOptions grid;

    PortfolioCommand(Terminal terminal, Jobs jobs, Interruption interruption) {
        this.terminal = terminal;
        this.jobs = jobs;
        this.interruption = interruption;
    }

    @Override
    public Integer call() {
        if (moves != null && moves < 1) {
            throw new ParameterException(spec.commandLine(), "--moves is " + moves + ", expected at least 1.");
        }
        if (threads != null && !Effort.isAllowed(threads)) {
            throw new ParameterException(
                    spec.commandLine(), "--threads is " + threads + ", expected 1 to " + Effort.MOST_THREADS + ".");
        }
        PortfolioRequest request = new PortfolioRequest(
                inputs.stream().map(Source::path).toList(),
                Source.path(output),
                Optional.ofNullable(seeds),
                moves == null ? OptionalInt.empty() : OptionalInt.of(moves),
                threads == null ? OptionalInt.empty() : OptionalInt.of(threads),
                grid.access(spec.commandLine()),
                Optional.ofNullable(catalogue).map(Source::path));
        PortfolioResult result = jobs.portfolio(request, ProgressView.control(terminal, false, interruption));
        terminal.print(terminal.out(), result.text(terminal.outStyle(false)));
        terminal.print(
                terminal.out(),
                List.of(
                        "",
                        "Written: portfolio.html, portfolio.xlsx, portfolio.csv and the best plan of each project and"
                                + " variant in " + output));
        return code(result);
    }

    private static int code(PortfolioResult result) {
        if (result.wasCancelled()) {
            return ExitCode.INTERRUPTED;
        } else if (result.isAnyFailed()) {
            return ExitCode.BAD_INPUT;
        } else if (!result.keepsRules()) {
            return ExitCode.RULES_BROKEN;
        }
        return result.isSound() ? ExitCode.DONE : ExitCode.LIMITS_BROKEN;
    }
}
