package evenrise.solver.cli;

import evenrise.model.contract.Harmless;
import evenrise.model.plan.Assessment;
import evenrise.solver.app.DocumentSet;
import evenrise.solver.app.FewMoves;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.PlanRequest;
import evenrise.solver.app.PlanResult;
import evenrise.solver.app.PlanTarget;
import evenrise.solver.app.Source;
import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
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
        name = "plan",
        header = "Find a plan for a project.",
        description = {
            "Gives every load a slot, so a panel and its phases, and every switched load an output of a board; sets"
                    + " every board's start delay and step. Keeps every hard rule where that is possible, then makes the"
                    + " project's objective as small as it can in the time.",
            "Ctrl-C ends the search and writes the best plan so far."
        },
        footer = {
            "%nExamples:",
            "  evenrise plan hall.project.json                    writes hall.plan.json after 30 s",
            "  evenrise plan hall.project.json --time 5m -o a.json",
            "  evenrise plan hall.project.json --time 5m --gap 2%%   no longer than until 2 %% are proven",
            "  evenrise plan hall.project.json --from a.json      goes on from an earlier plan",
            "  evenrise plan hall.project.json --from a.json --max-moves 8 -o b.json",
            "  evenrise plan hall.project.json --from a.json --changes back.moves.json -o b.json",
            "  evenrise plan hall.project.json --moves 200000     the same plan each time",
            "  evenrise plan hall.project.json --moves 200000 --seeds 1..20 --grid ws1,ws2 --keys keys/desk",
            "  evenrise plan - -o - < hall.yaml > hall.plan.json",
            "%nCurrents are in ampere: running and neutral currents rms, peaks instantaneous. Times are in seconds."
        })
final class PlanCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Jobs jobs;
    private final Interruption interruption;

    @Spec
    private CommandSpec spec;

    @Mixin
    private BudgetOptions budget;

    @Mixin
    private StrictOption strict;

    @Parameters(paramLabel = "PROJECT", description = "Project file, JSON or YAML; - reads standard input.")
    private String project;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "PLAN",
            description = "Plan file to write; - writes to standard output. Default: beside the project.")
    private String output;

    @Option(names = "--from", paramLabel = "PLAN", description = "Start at this earlier plan.")
    private String from;

    @Option(
            names = "--changes",
            paramLabel = "MOVES",
            description = "With --from: put down the moves of a change file that was saved from the page of that plan."
                    + " Without --time and --moves nothing else is done; with one of them the search goes on from there,"
                    + " and what was moved stays.")
    private String changes;

    @Option(
            names = "--max-moves",
            paramLabel = "N",
            description = "With --from: move at most so many breakers and control leads. What the earlier plan does not"
                    + " have, and settings, do not count.")
    private Integer maxMoves;

    @Option(
            names = "--per-move",
            paramLabel = "A",
            description = "With --from: what each such move costs, in ampere-equivalents of the objective.")
    private Double perMove;

    @Option(
            names = "--resume",
            description =
                    "Go on from what an earlier search for this plan left when it was cut off by a kill or a power "
                            + "cut; it keeps its best plan beside the plan every few seconds.")
    private boolean isResuming;

    @Option(
            names = "--place-all",
            description =
                    "Rather a place that breaks a rating than none: where a rating cannot be kept, every load has a"
                            + " place as far as slots and outputs go, and the overload is stated. Without it, loads are"
                            + " left without a place where that breaks less.")
    private boolean placesAll;

    @Mixin
    private PatienceOptions patience;

    @Mixin
    private ManySeedsOptions manySeeds;

    @Option(names = "--quiet", description = "No progress and no summary; failures and broken rules only.")
    private boolean isQuiet;

    @Option(names = "--report", paramLabel = "FOLDER", description = "Write every document of the plan there, too.")
    private String report;

    @Option(
            names = "--force",
            description = "With --report: overwrite files in the folder that no earlier report wrote, or that were "
                    + "changed since.")
    private boolean isForced;

    PlanCommand(Terminal terminal, Jobs jobs, Interruption interruption) {
        this.terminal = terminal;
        this.jobs = jobs;
        this.interruption = interruption;
    }

    @Override
    public Integer call() {
        Source source = terminal.source(project);
        PlanTarget target = target(source);
        PlanRequest request = new PlanRequest(
                source,
                Optional.ofNullable(from).map(terminal::source),
                budget.effort(spec.commandLine()),
                target,
                isResuming,
                placesAll,
                few(),
                patience.patience(spec.commandLine()),
                Optional.ofNullable(report)
                        .map(folder -> DocumentSet.into(Source.path(folder)).withOverwriting(isForced)),
                manySeeds.manySeeds(spec.commandLine()),
                Optional.ofNullable(changes).map(terminal::source));
        PlanResult result = jobs.plan(request, ProgressView.control(terminal, isQuiet, interruption));
        if (isQuiet) {
            sayWhatIsBroken(result.evaluation().assessment());
        } else {
            boolean isStream = target.file().isEmpty();
            PrintWriter writer = isStream ? terminal.err() : terminal.out();
            terminal.print(writer, result.text(isStream ? terminal.errStyle() : terminal.outStyle(false)));
            target.file()
                    .ifPresent(file ->
                            terminal.print(writer, List.of("", "Written: " + Harmless.shown(file.toString()))));
        }
        return result.search().wasCancelled()
                ? ExitCode.INTERRUPTED
                : ExitCode.of(result.evaluation().assessment(), strict.isStrict());
    }

    private FewMoves few() {
        try {
            return new FewMoves(
                    maxMoves == null ? OptionalInt.empty() : OptionalInt.of(maxMoves),
                    perMove == null ? OptionalDouble.empty() : OptionalDouble.of(perMove));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(
                    spec.commandLine(), "--max-moves is at least 0, and --per-move from 0 to 1e9: " + e.getMessage());
        }
    }

    private PlanTarget target(Source source) {
        if (output != null) {
            return output.equals(Terminal.STREAM)
                    ? PlanTarget.stream(terminal.data())
                    : PlanTarget.file(Source.path(output));
        }
        return source.path()
                .map(PlanTarget::besides)
                .orElseThrow(() -> new JobFailed(
                        JobFailed.Reason.REQUEST,
                        "a project from standard input has no name to give the plan." + " Say -o PLAN or -o -."));
    }

    private void sayWhatIsBroken(Assessment assessment) {
        if (assessment.isBroken()) {
            ShowsFailures.message(
                    terminal.err(),
                    "nothing is to be built from this plan: " + assessment.headline() + " Audit it to see where.");
        }
    }
}
