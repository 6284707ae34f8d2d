package evenrise.solver.cli;

import evenrise.model.file.WholeFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.project.Catalogue;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.solver.compare.Counts;
import evenrise.solver.compare.Finding;
import evenrise.solver.compare.Scenario;
import evenrise.solver.compare.Scenarios;
import evenrise.solver.compare.Sweep;
import evenrise.solver.report.CompareChart;
import evenrise.solver.report.CompareText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicInteger;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
        name = "compare",
        header = "Compare numbers of panels and boards for an estimate.",
        description = {
            "Builds the project from its catalogue with each number of panels and boards in the ranges, each by its"
                + " cheapest make-up that counting does not rule out, plans each for three aims, and shows the least"
                + " price and the front of price against peak inrush against sequence time.",
            "Every point is a project and a plan in the folder. A second run goes on where an interrupted one ended."
        },
        footer = {
            "%nExamples:",
            "  evenrise compare hall.project.json -o estimate",
            "  evenrise compare hall.project.json -o estimate --panels 3..6 --boards 6..14 --moves 200000"
        })
final class CompareCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Interruption interruption;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "PROJECT", description = "Project file with a catalogue.")
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
            converter = CountRange.class,
            description = "Numbers of panels. Default: the least that counting allows, and two more.")
    private Counts panels;

    @Option(
            names = "--boards",
            paramLabel = "N..M",
            converter = CountRange.class,
            description = "Numbers of boards. Default alike, for each number of panels.")
    private Counts boards;

    @Option(
            names = "--moves",
            paramLabel = "N",
            defaultValue = "60000",
            description = "Moves of each search. Default: ${DEFAULT-VALUE}.")
    private long moves;

    @Option(names = "--seed", paramLabel = "N", defaultValue = "1", description = "Seed of chance. Default: 1.")
    private long seed;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "Scenarios side by side. Default: one for each processor.")
    private Integer threads;

    CompareCommand(Terminal terminal, Interruption interruption) {
        this.terminal = terminal;
        this.interruption = interruption;
    }

    @Override
    public Integer call() {
        BudgetOptions.checkThreads(spec.commandLine(), threads);
        Project subject = new Inputs(terminal).project(project).value().orElseThrow();
        Catalogue catalogue = checked(subject);
        Path folder = folder();
        List<Scenarios.Cell> cells =
                new Scenarios(subject).cells(Optional.ofNullable(panels), Optional.ofNullable(boards));
        List<Scenario> scenarios =
                cells.stream().flatMap(cell -> cell.scenarios().stream()).toList();
        QuietLibraries.hush();
        Sweep sweep = new Sweep(folder, moves, seed, Evenrise.Version.ofThisProgram());
        interruption.stopsWith(sweep::stop);
        try {
            List<Finding> findings = sweep.run(scenarios, side(), progress(scenarios.size()));
            terminal.print(
                    terminal.out(),
                    CompareText.lines(subject.name(), catalogue.currency(), cells, findings, terminal.outPaint()));
            WholeFile.write(folder.resolve("scenarios.csv"), Csv.of(CompareText.values(findings)));
            WholeFile.write(
                    folder.resolve("front.svg"), CompareChart.svg(subject.name(), catalogue.currency(), findings));
            terminal.print(
                    terminal.out(),
                    List.of("", "Written: scenarios.csv, front.svg and each scenario's project and plan in " + output));
            if (interruption.happened()) {
                return ExitCode.INTERRUPTED;
            }
            return findings.stream().anyMatch(Finding::isSound) ? ExitCode.DONE : ExitCode.RULES_BROKEN;
        } catch (WriteFailed e) {
            throw new Failure(ExitCode.NOT_WRITTEN, e.getMessage());
        }
    }

    private int side() {
        return threads == null ? Runtime.getRuntime().availableProcessors() : threads;
    }

    private java.util.function.Consumer<Finding> progress(int all) {
        AtomicInteger done = new AtomicInteger();
        return finding -> {
            String how = finding.isSound()
                    ? String.format(
                            java.util.Locale.ROOT,
                            "price %.2f  peak %.1f A  time %.2f s",
                            finding.scenario().price(),
                            finding.metrics().peakInrushAmps(),
                            finding.metrics().durationSeconds())
                    : finding.why().orElseThrow();
            terminal.print(
                    terminal.err(),
                    List.of(" " + done.incrementAndGet() + "/" + all + "  "
                            + finding.scenario().key() + "  " + how));
        };
    }

    /** What a comparison needs and a plan does not, all said in one pass. */
    private Catalogue checked(Project subject) {
        List<String> missing = new ArrayList<>();
        if (subject.catalogue().isEmpty()
                || subject.catalogue().get().panelTypes().isEmpty()) {
            missing.add(project + ": no catalogue with panel_types. 'evenrise schema project' shows the fields.");
        }
        if (subject.boardTypes().isEmpty()) {
            missing.add(project + ": no board_types to choose from.");
        }
        for (Load load : subject.loads()) {
            boolean isTied = !load.panels().isEmpty()
                    || load.fixed().panel().isPresent()
                    || load.fixed().slot().isPresent()
                    || load.fixed().board().isPresent()
                    || load.fixed().output().isPresent();
            if (isTied) {
                missing.add(project + ": load '" + load.id()
                        + "' is tied to a panel or board that a comparison replaces. Maybe take away its"
                        + " panels and fixed.");
            }
        }
        if (!missing.isEmpty()) {
            throw new Failure(ExitCode.BAD_INPUT, missing);
        }
        return subject.catalogue().orElseThrow();
    }

    private Path folder() {
        Path folder = Inputs.path(output);
        try {
            return Files.createDirectories(folder);
        } catch (IOException e) {
            throw new Failure(
                    ExitCode.NOT_WRITTEN, "folder '" + output + "' could not be made: " + e.getMessage() + ".");
        }
    }
}
