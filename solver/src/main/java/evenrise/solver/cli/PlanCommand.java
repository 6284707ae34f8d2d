package evenrise.solver.cli;

import evenrise.model.file.Reading;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.report.Sanitizer;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
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
            "  evenrise plan hall.project.json --from a.json      goes on from an earlier plan",
            "  evenrise plan hall.project.json --moves 200000     the same plan each time",
            "  evenrise plan - -o - < hall.yaml > hall.plan.json",
            "%nCurrents are in ampere: running and neutral currents rms, peaks instantaneous. Times are in seconds."
        })
final class PlanCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final PlannerSource planners;
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
            names = "--resume",
            description =
                    "Go on from what an earlier search for this plan left when it was cut off by a kill or a power "
                            + "cut; it keeps its best plan beside the plan every few seconds.")
    private boolean isResuming;

    @Option(
            names = "--place-all",
            description =
                    "Rather a place that breaks a rating than none: where a rating cannot be kept, every load has a"
                            + " place as far as slots and outputs go, and the overload is stated. Without it, loads are left"
                            + " without a place where that breaks less.")
    private boolean placesAll;

    @Option(names = "--quiet", description = "No progress and no summary; failures and broken rules only.")
    private boolean isQuiet;

    @Option(names = "--report", paramLabel = "FOLDER", description = "Write every document of the plan there, too.")
    private String report;

    @Option(
            names = "--force",
            description = "With --report: overwrite files in the folder that no earlier report wrote, or that were "
                    + "changed since.")
    private boolean isForced;

    PlanCommand(Terminal terminal, PlannerSource planners, Interruption interruption) {
        this.terminal = terminal;
        this.planners = planners;
        this.interruption = interruption;
    }

    @Override
    public Integer call() {
        budget.check(spec.commandLine());
        Inputs inputs = new Inputs(terminal);
        Reading<Project> read = inputs.project(project);
        Project planned = read.value().orElseThrow();
        PlanTarget target = PlanTarget.of(Optional.ofNullable(output), project);
        Optional<Plan> earlier = start(target).map(name -> inputs.earlierPlan(name, planned));
        Optional<DocumentFiles> documents =
                Optional.ofNullable(report).map(folder -> new DocumentFiles(folder, isForced, project, from));
        documents.ifPresent(DocumentFiles::refuseWhatIsNotOurs);
        Inputs.findings(read).forEach(finding -> ShowsFailures.message(terminal.err(), project + ": " + finding));
        PlanningRequest request =
                new PlanningRequest(planned, earlier, budget.budget(), budget.seed(), budget.threads(), placesAll);
        return new PlanRun(terminal, planners, interruption, isQuiet, strict.isStrict())
                .run(read, request, target, documents);
    }

    /** The plan to start at, by its file; says what an earlier search has left. */
    private Optional<String> start(PlanTarget target) {
        Optional<Path> left = target.checkpoint().flatMap(Checkpoint::left);
        if (isResuming && from != null) {
            throw new Failure(ExitCode.USAGE, "--resume and --from both say where to start. Give one of them.");
        }
        if (isResuming && left.isEmpty()) {
            ShowsFailures.message(terminal.err(), "no search for this plan was cut off; this one starts anew.");
        }
        if (isResuming && left.isPresent()) {
            ShowsFailures.message(
                    terminal.err(),
                    "goes on from '" + Sanitizer.clean(left.get().toString())
                            + "', left by a search that was cut off.");
            return left.map(Path::toString);
        }
        if (left.isPresent()) {
            Path aside = target.checkpoint().orElseThrow().putAside();
            ShowsFailures.message(
                    terminal.err(),
                    "an earlier search for this plan was cut off; its best plan is now '"
                            + Sanitizer.clean(aside.toString()) + "'. Maybe start at it with --from.");
        }
        return Optional.ofNullable(from);
    }
}
