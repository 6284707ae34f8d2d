package evenrise.solver.cli;

import evenrise.solver.app.CsvStyle;
import evenrise.solver.app.DocumentFormat;
import evenrise.solver.app.DocumentSet;
import evenrise.solver.app.Effort;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.LabelOrder;
import evenrise.solver.app.ReportRequest;
import evenrise.solver.app.ReportResult;
import evenrise.solver.app.Source;
import java.nio.file.Path;
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
    private final Jobs jobs;

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
            defaultValue = "html,pdf,xlsx,dxf,csv",
            description = "Of html, pdf, xlsx, dxf, csv. Default: all.")
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

    @Option(
            names = "--against",
            paramLabel = "PLAN",
            description = "Earlier plan: every document tells and marks what changed since.")
    private String against;

    @Option(
            names = "--against-project",
            paramLabel = "PROJECT",
            description = "Project of the earlier plan, where that is another.")
    private String againstProject;

    @Option(
            names = "--catalogue",
            paramLabel = "PRICES",
            description = "Prices in the place of the project's own, .csv or .xlsx; 'evenrise catalogue' writes one.")
    private Path catalogue;

    @Option(
            names = "--csv-keys",
            description = "Head tables of values with keys, as fields of a project are spelt: running_a.")
    private boolean hasKeys;

    @Option(
            names = "--csv-mark",
            description = "Begin tables of values with a byte-order mark, as some spreadsheets need it.")
    private boolean hasMark;

    @Option(
            names = "--sections",
            split = ",",
            paramLabel = "SECTION",
            description =
                    "Print these sections alone, such as schedules,drawings,checks: a set for one trade. A section"
                            + " keeps its sheet numbers. Default: all.")
    private List<String> sections = List.of();

    @Option(
            names = "--title-block",
            paramLabel = "FILE",
            description = "Client, site, job number, who drew and checked, revisions so far: a file of format"
                    + " evenrise-title/1 for cover and drawings.")
    private String titleBlock;

    @Option(
            names = "--labels",
            paramLabel = "[KIND=]STOCK",
            description =
                    "Write labels on stock sheets, too: a4-63.5x38.1 for breakers, cables and control leads, or for"
                            + " one kind, as cable=a4-70x37, equipment=a4-99.1x67.7. Any stock in millimetres by sheet, label,"
                            + " columns and rows, left and top margin, gaps: 210x297:70x37:3x8:0x0.5:0x0. May be repeated.")
    private List<String> labels = List.of();

    @Option(
            names = "--label-link",
            paramLabel = "ADDRESS",
            defaultValue = "plan.html",
            description = "Where the page lies, for the codes on labels, such as https://example.org/plan.html."
                    + " Default: plan.html.")
    private String labelLink;

    @Option(
            names = "--language",
            paramLabel = "LANGUAGE",
            defaultValue = "en",
            description =
                    "Of labels, and of one more set of sheets for site (panel schedules, board settings, landing lists,"
                            + " commissioning, directories): en, de, fr. All else is in English. Default: en.")
    private String language;

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

    ReportCommand(Terminal terminal, Jobs jobs) {
        this.terminal = terminal;
        this.jobs = jobs;
    }

    @Override
    public Integer call() {
        DocumentSet plain = DocumentSet.into(Source.path(output)).withSections(sections);
        DocumentSet usual = titleBlock == null ? plain : plain.withTitleBlock(terminal.source(titleBlock));
        ReportRequest request = new ReportRequest(
                terminal.source(project),
                terminal.source(plan),
                usual.withFormats(formats.stream().map(ReportCommand::format).toList())
                        .withImprint(revision, date == null ? usual.date() : date)
                        .withOverwriting(isForced)
                        .withLabels(new LabelOrder(labels, labelLink))
                        .withLanguage(language)
                        .withCsv(new CsvStyle(hasKeys, hasMark)),
                Optional.ofNullable(against).map(terminal::source),
                Optional.ofNullable(againstProject).map(terminal::source),
                Optional.ofNullable(catalogue),
                trials,
                Effort.USUAL);
        ReportResult result = jobs.report(request, ProgressView.control(terminal));
        terminal.print(terminal.out(), result.text(terminal.outStyle(false)));
        terminal.print(
                terminal.out(), List.of("", "Written: " + String.join(", ", result.written()) + " in " + output));
        return ExitCode.of(result.evaluation().assessment(), strict.isStrict());
    }

    private static DocumentFormat format(String word) {
        return DocumentFormat.ALL.stream()
                .filter(each -> each.word().equals(word))
                .findFirst()
                .orElseThrow(() -> new JobFailed(
                        JobFailed.Reason.REQUEST,
                        "--format is '" + word + "', expected of html, pdf, xlsx, dxf, csv."));
    }
}
