package evenrise.solver.cli;

import evenrise.solver.app.Jobs;
import evenrise.solver.app.OfferRequest;
import evenrise.solver.app.OfferResult;
import evenrise.solver.app.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

@Command(
        name = "offer",
        header = "Show alternates side by side for a client.",
        description = {
            "Judges each alternate's plan and writes a page for a browser, a sheet to print and a table that compare price,"
                    + " peak inrush, time, spare and floor space, with differences to the first alternate. What prices"
                    + " leave out, assumptions and cautions stand with them; unit prices and circuits do not."
        },
        footer = {
            "%nExample:",
            "  evenrise offer --title 'Copper Mill' -o offer \\",
            "    --alternate 'Least price' least.project.json least.plan.json \\",
            "    --alternate 'Low peak' calm.project.json calm.plan.json"
        })
final class OfferCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Jobs jobs;

    @Spec
    private CommandSpec spec;

    @Option(
            names = "--alternate",
            required = true,
            arity = "3",
            paramLabel = "NAME PROJECT PLAN",
            hideParamSyntax = true,
            description = "An alternate: its name, its project file and a plan of it. Once for each, up to "
                    + OfferRequest.MOST + ".")
    private List<String> alternates;

    @Option(
            names = {"-o", "--output"},
            required = true,
            paramLabel = "FOLDER",
            description = "Where page, sheet and table go.")
    private String output;

    @Option(
            names = "--catalogue",
            paramLabel = "FILE",
            description = "Prices in the place of the projects' own, .csv or .xlsx; 'evenrise catalogue' writes one.")
    private String catalogue;

    @Option(
            names = "--draws",
            paramLabel = "N",
            defaultValue = "0",
            description = "Draw the quantities that alternates leave open so often, and show the range of prices.")
    private int draws;

    @Option(
            names = "--title",
            paramLabel = "TEXT",
            defaultValue = "Alternates",
            description = "Title of the offer. Default: ${DEFAULT-VALUE}.")
    private String title;

    OfferCommand(Terminal terminal, Jobs jobs) {
        this.terminal = terminal;
        this.jobs = jobs;
    }

    @Override
    public Integer call() {
        OfferResult result = jobs.offer(request());
        terminal.print(terminal.out(), result.text(terminal.outStyle(true)));
        terminal.print(
                terminal.out(), List.of("", "Written: " + String.join(", ", result.written()) + " in " + output));
        return result.assessments().stream()
                .map(each -> ExitCode.of(each, false))
                .filter(code -> code != ExitCode.DONE)
                .min(Integer::compare)
                .orElse(ExitCode.DONE);
    }

    private OfferRequest request() {
        List<OfferRequest.Named> named = new ArrayList<>();
        for (int i = 0; i < alternates.size(); i += 3) {
            named.add(new OfferRequest.Named(
                    alternates.get(i), terminal.source(alternates.get(i + 1)), terminal.source(alternates.get(i + 2))));
        }
        try {
            return new OfferRequest(
                    title, named, Optional.ofNullable(catalogue).map(Source::path), draws, Source.path(output));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), "--alternate, --draws: " + e.getMessage() + ".");
        }
    }
}
