package evenrise.solver.cli;

import evenrise.solver.app.AuditRequest;
import evenrise.solver.app.ExplainRequest;
import evenrise.solver.app.ExplainResult;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.Listing;
import evenrise.solver.app.Source;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
        name = "explain",
        header = "Say why a load is where it is.",
        description = "Judges the plan anew with the load in every other place (free slots and outputs, exchanges with"
                + " other loads, other settings of its board), and says what each breaks or costs, and why the load does"
                + " not come on earlier. Or asks what makes the peak, or what a rule wants.",
        footer = {
            "%nExamples:",
            "  evenrise explain hall.project.json hall.plan.json AMP-12",
            "  evenrise explain hall.project.json hall.plan.json AMP-12 --all     every place, every exchange",
            "  evenrise explain hall.project.json hall.plan.json AMP-12 --json > amp-12.json",
            "  evenrise explain hall.project.json hall.plan.json --peak",
            "  evenrise explain hall.project.json hall.plan.json --rule rating"
        })
final class ExplainCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Jobs jobs;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "PROJECT", description = "Project file; - reads standard input.")
    private String project;

    @Parameters(index = "1", paramLabel = "PLAN", description = "Plan file; - reads standard input.")
    private String plan;

    @Parameters(index = "2", arity = "0..1", paramLabel = "LOAD", description = "Id of the load that is asked about.")
    private String load;

    @Option(names = "--peak", description = "Instead, say what makes the peak, and which single changes lower it.")
    private boolean peak;

    @Option(
            names = "--rule",
            paramLabel = "RULE",
            description = "Instead, say what this rule asks, where the plan breaks it, and what is nearest to it.")
    private String rule;

    @Option(names = "--all", description = "Try every exchange, and show every place.")
    private boolean all;

    @Option(names = "--json", description = "Write every place of the load as JSON.")
    private boolean asJson;

    @Option(
            names = "--from",
            paramLabel = "EARLIER",
            description = "Earlier plan of this project, which moves are counted from.")
    private String from;

    ExplainCommand(Terminal terminal, Jobs jobs) {
        this.terminal = terminal;
        this.jobs = jobs;
    }

    @Override
    public Integer call() {
        int asked = (load == null ? 0 : 1) + (peak ? 1 : 0) + (rule == null ? 0 : 1);
        if (asked != 1) {
            throw new ParameterException(
                    spec.commandLine(), "one of LOAD, --peak and --rule is to be given, not " + asked + " of them.");
        }
        if (asJson && load == null) {
            throw new ParameterException(spec.commandLine(), "--json is for the places of a LOAD.");
        }
        Optional<Source> earlier = Optional.ofNullable(from).map(terminal::source);
        if (load == null) {
            AuditRequest request = new AuditRequest(
                    terminal.source(project), terminal.source(plan), earlier, Optional.empty(), Optional.empty());
            Listing listing =
                    peak ? jobs.explainPeak(request, ProgressView.control(terminal)) : jobs.explainRule(request, rule);
            terminal.print(terminal.out(), listing.text(terminal.outStyle(all)));
            return ExitCode.DONE;
        }
        ExplainResult result = jobs.explain(
                new ExplainRequest(terminal.source(project), terminal.source(plan), load, earlier, all),
                ProgressView.control(terminal));
        terminal.print(terminal.out(), asJson ? List.of(result.json()) : result.text(terminal.outStyle(all)));
        return ExitCode.DONE;
    }
}
