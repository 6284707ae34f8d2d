package evenrise.solver.cli;

import evenrise.model.contract.Harmless;
import evenrise.model.plan.Assessment;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.ReworkRequest;
import evenrise.solver.app.ReworkResult;
import evenrise.solver.app.Source;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
        name = "rework",
        header = "Cure a plan as built with few changes, and say in which order to make them.",
        description = {
            "Looks around the plan as it is built for plans that keep every hard rule and move as few breakers and"
                    + " control leads as possible; shows moves against objective, from the cure alone to as good as new;"
                    + " and writes, for the plan chosen, the steps of the work in an order in which nothing is broken on"
                    + " the way, and sheets to print, a page a stage.",
            "A panel schedule in CSV or XLSX is a plan as built, too: panel, slot, load, breaker, and where it has them"
                    + " control, start_delay_s and step_s. What it does not state is not judged.",
            "Readings are a CSV table with the columns load, phase, running_a and idle_a; they count instead of the "
                    + "project's own."
        },
        footer = {
            "%nExamples:",
            "  evenrise rework hall.project.json built.plan.json -o rework",
            "  evenrise rework hall.project.json built.plan.json --measured clamp.csv --max-moves 12 -o rework",
            "  evenrise rework hall.project.json built.plan.json --stay-live control --night 240,240 -o rework",
            "  evenrise rework hall.project.json built.plan.json --to new.plan.json -o rework",
            "  evenrise rework hall.project.json panels.xlsx --was hall-before.project.json -o rework",
            "  evenrise rework hall.project.json built.plan.json --per-move 2.5 --dead-at-once 4 -o rework",
            "  evenrise rework hall.project.json built.plan.json --seeds 1..8 --moves 200000 -o rework",
            "%nA move is a breaker re-terminated or a control lead re-landed; --moves counts changes tried in the"
                    + " search.",
            "Currents are in ampere: running and neutral currents rms, peaks instantaneous. Times are in seconds."
        })
final class ReworkCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Jobs jobs;
    private final Interruption interruption;

    @Spec
    private CommandSpec spec;

    @Mixin
    private BudgetOptions budget;

    @Mixin
    private ReworkOptions options;

    @Mixin
    private ManySeedsOptions manySeeds;

    @Mixin
    private SheetsOptions sheets;

    @Parameters(index = "0", paramLabel = "PROJECT", description = "Project file; - reads standard input.")
    private String project;

    @Parameters(
            index = "1",
            paramLabel = "PLAN",
            description = "Plan file, as built, or a panel schedule (.csv, .xlsx); - reads standard input.")
    private String plan;

    @Option(names = "--measured", paramLabel = "CSV", description = "Readings of a clamp meter or a logger.")
    private String measured;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FOLDER",
            required = true,
            description = "Folder for the front, its plans and the work; made where there is none.")
    private String output;

    @Option(names = "--quiet", description = "No progress and no summary; failures and broken rules only.")
    private boolean isQuiet;

    ReworkCommand(Terminal terminal, Jobs jobs, Interruption interruption) {
        this.terminal = terminal;
        this.jobs = jobs;
        this.interruption = interruption;
    }

    @Override
    public Integer call() {
        options.check(spec.commandLine());
        ReworkRequest request = new ReworkRequest(
                terminal.source(project),
                terminal.source(plan),
                Optional.ofNullable(measured).map(Source::path),
                Source.path(output),
                budget.effort(spec.commandLine()),
                options.perMoveAmps(),
                options.maxMoves(),
                options.deadAtOnce(),
                options.keepsRunning(),
                options.night(),
                options.target().map(terminal::source),
                options.was().map(terminal::source),
                options.spares(),
                options.isResuming(),
                manySeeds.manySeeds(spec.commandLine()),
                sheets.sheets(terminal));
        ReworkResult result = jobs.rework(request, ProgressView.control(terminal, isQuiet, interruption));
        if (!isQuiet) {
            terminal.print(terminal.out(), result.text(terminal.outStyle(false)));
            terminal.print(
                    terminal.out(),
                    List.of(
                            "",
                            "Written to folder "
                                    + Harmless.shown(request.folder().toString()) + "."));
        }
        return exitCode(result);
    }

    private int exitCode(ReworkResult result) {
        if (result.wasCancelled()) {
            return ExitCode.INTERRUPTED;
        }
        Assessment assessment = result.evaluation().assessment();
        if (assessment.hardRulesBroken() > 0) {
            ShowsFailures.message(
                    terminal.err(),
                    "the plan chosen breaks hard rules in " + assessment.hardRulesBroken()
                            + " places; audit it to see where.");
        }
        if (result.breaksOnTheWay()) {
            ShowsFailures.message(terminal.err(), "no order of work was found that breaks nothing on the way.");
        }
        return result.breaksOnTheWay() ? ExitCode.RULES_BROKEN : ExitCode.of(assessment, false);
    }
}
