package evenrise.solver.cli;

import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Rotation;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.report.Sanitizer;
import evenrise.solver.rework.Measured;
import evenrise.solver.rework.MeasuredCsv;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
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
                + " the way.",
            "Readings are a CSV table with the columns load, phase, running_a and idle_a; they count instead of the "
                    + "project's own."
        },
        footer = {
            "%nExamples:",
            "  evenrise rework hall.project.json built.plan.json -o rework",
            "  evenrise rework hall.project.json built.plan.json --measured clamp.csv --max-moves 12 -o rework",
            "  evenrise rework hall.project.json built.plan.json --per-move 2.5 --dead-at-once 4 -o rework",
            "%nA move is a breaker re-terminated or a control lead re-landed; --moves counts changes tried in the"
                    + " search.",
            "Currents are in ampere: running and neutral currents rms, peaks instantaneous. Times are in seconds."
        })
final class ReworkCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final PlannerSource planners;
    private final Interruption interruption;

    @Spec
    private CommandSpec spec;

    @Mixin
    private BudgetOptions budget;

    @Mixin
    private ReworkOptions options;

    @Parameters(index = "0", paramLabel = "PROJECT", description = "Project file; - reads standard input.")
    private String project;

    @Parameters(index = "1", paramLabel = "PLAN", description = "Plan file, as built; - reads standard input.")
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

    ReworkCommand(Terminal terminal, PlannerSource planners, Interruption interruption) {
        this.terminal = terminal;
        this.planners = planners;
        this.interruption = interruption;
    }

    @Override
    public Integer call() {
        budget.check(spec.commandLine());
        options.check(spec.commandLine());
        Inputs inputs = new Inputs(terminal);
        Reading<Project> read = inputs.project(project);
        Project subject = read.value().orElseThrow();
        Plan built = inputs.plan(plan, subject).value().orElseThrow();
        Optional<Measured> readings = Optional.ofNullable(measured).map(name -> readings(name, subject, built));
        ReworkFolder folder = ReworkFolder.of(output, project, plan, measured);
        List<String> notes = new ArrayList<>();
        if (readings.isPresent()) {
            notes.add(
                    readings.get().currents().size() + " of " + subject.loads().size()
                            + " loads have measured currents; the project with them is " + ReworkFolder.MEASURED + ".");
            notes.addAll(readings.get().notes());
            read = Inputs.sound(
                    ReworkFolder.MEASURED,
                    ProjectFile.read(folder.measured(readings.get().in(subject)), ReworkFolder.MEASURED));
        }
        for (String finding : Inputs.findings(read)) {
            ShowsFailures.message(terminal.err(), project + ": " + finding);
        }
        PlanningRequest request = new PlanningRequest(
                Rotation.asBuilt(read.value().orElseThrow(), built),
                Optional.of(built),
                budget.budget(),
                budget.seed(),
                budget.threads());
        return new ReworkRun(terminal, planners, interruption, isQuiet).run(read, request, options, notes, folder);
    }

    private static Measured readings(String name, Project subject, Plan built) {
        Measured readings = MeasuredCsv.read(text(name), subject, built);
        if (!readings.problems().isEmpty()) {
            throw new Failure(
                    ExitCode.BAD_INPUT,
                    readings.problems().stream()
                            .map(problem -> name + ": " + Sanitizer.clean(problem))
                            .toList());
        }
        return readings;
    }

    private static String text(String name) {
        try {
            byte[] bytes = Files.readAllBytes(Inputs.path(name));
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException e) {
            throw new Failure(ExitCode.BAD_INPUT, name + ": this is not UTF-8 text. Save the table as CSV in UTF-8.");
        } catch (IOException e) {
            throw new Failure(
                    ExitCode.BAD_INPUT,
                    "'" + Sanitizer.clean(name) + "' cannot be read: there is no such file, or it may not be read.");
        }
    }
}
