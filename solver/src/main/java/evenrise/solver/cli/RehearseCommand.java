package evenrise.solver.cli;

import evenrise.solver.app.Effort;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.RehearseRequest;
import evenrise.solver.app.RehearseResult;
import evenrise.solver.app.Source;
import evenrise.solver.app.TrialsRequest;
import evenrise.solver.app.TrialsResult;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
        name = "rehearse",
        header = "Play what may happen on a plan.",
        description = {
            "Shows what comes on and goes off, and what the supply and every panel draw, when somebody presses on or"
                    + " off, when the mains sag, fail and return, when the emergency contact closes and opens, when a"
                    + " board is dead or a breaker fails. Without --event and --script it plays an ordinary day: on, a"
                    + " brownout, an emergency, off.",
            "An event is [SECONDS:]WORD[=NUMBER][@WHICH]; without a time it happens 5 s after all has come to rest."
                    + " Words: on and off (in scripts system-on, system-off), lock, unlock, emergency, release;"
                    + " group-on@GROUP, group-off@GROUP; mains=PERCENT, of some phases mains=PERCENT@A,B;"
                    + " board-dead@BOARD, board-back@BOARD; stays-closed@LOAD, stays-open@LOAD, late=SECONDS@LOAD,"
                    + " early=SECONDS@LOAD, mended@LOAD."
        },
        footer = {
            "%nExamples:",
            "  evenrise rehearse hall.project.json hall.plan.json",
            "  evenrise rehearse hall.project.json hall.plan.json --event on --event emergency --event release",
            "  evenrise rehearse hall.project.json hall.plan.json -e 0:on -e 60:mains=0 -e 61:mains=100",
            "  evenrise rehearse hall.project.json hall.plan.json --script day.json --trace day.csv",
            "  evenrise rehearse hall.project.json hall.plan.json --trials 100000",
            "%nCurrents are in ampere, instantaneous peaks. Times are in seconds from the script's zero."
        })
final class RehearseCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Jobs jobs;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "PROJECT", description = "Project file; - reads standard input.")
    private String project;

    @Parameters(index = "1", paramLabel = "PLAN", description = "Plan file; - reads standard input.")
    private String plan;

    @ArgGroup
    private Happenings source;

    @Mixin
    private StrictOption strict;

    @Option(
            names = "--trials",
            paramLabel = "N",
            description =
                    "Instead of events, draw closing times, angles, inrush and voltage of so many switch-ons, and "
                            + "show the percentiles of peaks and dips.")
    private Integer trials;

    @Option(names = "--seed", paramLabel = "N", defaultValue = "1", description = "Seed of the trials. Default: 1.")
    private long seed;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "Threads that share the trials; the result is the same. Default: one for each processor, at "
                    + "most 8.")
    private Integer threads;

    @Option(
            names = "--trace",
            paramLabel = "FILE",
            description = "Write everything that happens, as JSON, or as CSV where the name ends so.")
    private String trace;

    @Option(
            names = "--idle",
            description = "As if no show ran: what is on draws its idle current. Default: the greater of that and its "
                    + "running current.")
    private boolean idle;

    @Option(names = "--all", description = "Show every breaker and all long lists.")
    private boolean all;

    @Mixin
    private GridOptions grid;

    /** Where the happenings come from: one of the two. */
    static final class Happenings {
        @Option(
                names = {"-e", "--event"},
                paramLabel = "EVENT",
                description = "Something that happens; may be given several times, in the order of time.")
        private List<String> events = List.of();

        @Option(names = "--script", paramLabel = "FILE", description = "Script file with all that happens.")
        private String script;
    }

    RehearseCommand(Terminal terminal, Jobs jobs) {
        this.terminal = terminal;
        this.jobs = jobs;
    }

    @Override
    public Integer call() {
        Effort effort = BudgetOptions.effort(spec.commandLine(), null, null, seed, threads);
        if (trials != null) {
            return trials(effort);
        }
        if (grid.access(spec.commandLine()).isPresent()) {
            throw new JobFailed(JobFailed.Reason.REQUEST, "--grid goes with --trials.");
        }
        RehearseRequest request = new RehearseRequest(
                terminal.source(project),
                terminal.source(plan),
                Optional.ofNullable(source).map(each -> each.script).map(Source::file),
                source == null ? List.of() : source.events,
                idle,
                Optional.ofNullable(trace).map(Source::path));
        RehearseResult result = jobs.rehearse(request, ProgressView.control(terminal));
        terminal.print(terminal.out(), result.text(terminal.outStyle(all)));
        return result.isBroken()
                ? ExitCode.RULES_BROKEN
                : ExitCode.of(result.evaluation().assessment(), strict.isStrict());
    }

    private int trials(Effort effort) {
        if (trials < 1 || source != null) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    trials < 1
                            ? "--trials is " + trials + ", expected at least 1."
                            : "--trials goes without --event and --script.");
        }
        TrialsRequest request = new TrialsRequest(
                terminal.source(project),
                terminal.source(plan),
                trials,
                effort,
                Optional.ofNullable(trace).map(Source::path),
                grid.access(spec.commandLine()));
        TrialsResult result = jobs.trials(request, ProgressView.control(terminal));
        terminal.print(terminal.out(), result.text(terminal.outStyle(all)));
        return ExitCode.of(result.evaluation().assessment(), strict.isStrict());
    }
}
