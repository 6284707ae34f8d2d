package evenrise.solver.cli;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.file.Reading;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.review.Networks;
import evenrise.model.rules.Layout;
import evenrise.model.rules.SupplyVoltage;
import evenrise.model.scatter.NodeScatter;
import evenrise.model.scatter.Trials;
import evenrise.solver.report.AssessmentText;
import evenrise.solver.report.page.Document;
import evenrise.solver.report.page.Documents;
import evenrise.solver.report.page.Imprint;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "report",
        header = "Write the documents that each trade takes away.",
        description = "One page for a browser that needs no network, sheets to print, a workbook and tables of values:"
            + " panel schedules, landing lists, the sequence over time, balance, shutdown groups, electrical findings,"
            + " bill of materials, commissioning sheet, labels.",
        footer = {
            "%nExamples:",
            "  evenrise report hall.project.json hall.plan.json -o documents",
            "  evenrise report hall.project.json hall.plan.json -o documents --format html,xlsx --revision B",
            "  evenrise report hall.project.json hall.plan.json -o documents --against earlier.plan.json"
        })
final class ReportCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "PROJECT", description = "Project file.")
    private String project;

    @Parameters(index = "1", paramLabel = "PLAN", description = "Plan file.")
    private String plan;

    @Option(
            names = {"-o", "--output"},
            required = true,
            paramLabel = "FOLDER",
            description = "Where the documents go.")
    private String output;

    @Option(
            names = "--format",
            split = ",",
            paramLabel = "FORMAT",
            defaultValue = "html,pdf,xlsx,csv",
            description = "Of html, pdf, xlsx, csv. Default: all.")
    private List<String> formats;

    @Option(
            names = "--revision",
            paramLabel = "TEXT",
            defaultValue = "A",
            description = "Revision on every page. Default: A.")
    private String revision;

    @Mixin
    private StrictOption strict;

    @Option(names = "--date", paramLabel = "TEXT", description = "Date on every page. Default: today.")
    private String date;

    @Option(names = "--against", paramLabel = "PLAN", description = "Earlier plan to tell the differences to.")
    private String against;

    @Option(
            names = "--trials",
            paramLabel = "N",
            defaultValue = "0",
            description = "Draw so many switch-ons and show the percentiles of peaks and dips, too.")
    private int trials;

    @Option(
            names = "--force",
            description = "Overwrite files in the folder that no earlier report wrote, or that were changed since.")
    private boolean isForced;

    ReportCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        formats.stream()
                .filter(each -> !DocumentFiles.FORMATS.contains(each))
                .findFirst()
                .ifPresent(each -> {
                    throw new Failure(ExitCode.USAGE, "--format is '" + each + "', expected of html, pdf, xlsx, csv.");
                });
        DocumentFiles files = new DocumentFiles(output, isForced, project, plan, against);
        files.refuseWhatIsNotOurs();
        Inputs inputs = new Inputs(terminal);
        Reading<Project> read = inputs.project(project);
        Project subject = read.value().orElseThrow();
        Layout layout = Layout.of(subject, inputs.plan(plan, subject).value().orElseThrow());
        Optional<Plan> earlier = Optional.ofNullable(against).map(name -> inputs.earlierPlan(name, subject));
        Evaluation evaluation = Evaluation.of(layout, () -> Planned.usualBounds(subject), earlier);
        Imprint imprint = new Imprint(
                subject.name(),
                revision,
                date == null ? LocalDate.now(ZoneId.systemDefault()).toString() : date,
                read.sha256(),
                Evenrise.Version.ofThisProgram());
        List<NodeScatter> scatter = trials < 1
                ? List.of()
                : Trials.of(
                        layout,
                        SupplyVoltage.scatter(subject),
                        Networks.of(layout),
                        trials,
                        1,
                        Runtime.getRuntime().availableProcessors());
        Document document = Documents.of(imprint, evaluation, earlier, scatter);
        terminal.print(terminal.out(), AssessmentText.lines(evaluation.assessment(), terminal.outPaint()));
        terminal.print(
                terminal.out(),
                List.of("", "Written: " + String.join(", ", files.write(document, formats)) + " in " + output));
        return ExitCode.of(evaluation.assessment(), strict.isStrict());
    }
}
