package evenrise.solver.cli;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.file.Format;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.file.WriteFailed;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.solver.intake.TypicalInrush;
import evenrise.solver.report.AuditSheet;
import evenrise.solver.report.AuditText;
import evenrise.solver.report.GuessedText;
import evenrise.solver.report.Json;
import evenrise.solver.report.NextLoadText;
import evenrise.solver.report.TypicalInrushText;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "audit",
        header = "Judge a plan, whoever made it.",
        description = "Recomputes every hard rule and every figure from the project and the plan alone, shows what "
                + "makes the peak, and says where the plan file's own figures do not follow from its assignments.",
        footer = {
            "%nExamples:",
            "  evenrise audit hall.project.json hall.plan.json",
            "  evenrise audit hall.project.json hall.plan.json --all     every place, every load",
            "  evenrise audit hall.project.json hall.plan.json --json > audit.json",
            "  evenrise audit hall.project.json hall.plan.json --next-load 16:2",
            "  evenrise audit hall.project.json hall.plan.json --guessed     what is to be confirmed",
            "  evenrise audit hall.project.json hall.plan.json --typical-inrush",
            "%nCurrents are in ampere: running and neutral currents rms, peaks instantaneous. Times are in seconds."
        })
final class AuditCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "PROJECT", description = "Project file; - reads standard input.")
    private String project;

    @Parameters(index = "1", paramLabel = "PLAN", description = "Plan file; - reads standard input.")
    private String plan;

    @Mixin
    private StrictOption strict;

    @Option(names = "--all", description = "Show long lists in full.")
    private boolean all;

    @Option(names = "--json", description = "Write the audit as JSON, always in full.")
    private boolean asJson;

    @Option(
            names = "--next-load",
            paramLabel = "A[:POLES]",
            description = "Instead of the audit, show where one more load of so many ampere could go; one pole unless "
                    + "told otherwise.")
    private String nextLoad;

    @Option(
            names = "--guessed",
            description = "Instead of the audit, list what the project says of its loads and nobody stated.")
    private boolean guessed;

    @Option(
            names = "--typical-inrush",
            description = "Instead of the audit, propose for each load that states no inrush what is usual for its kind"
                    + " of gear.")
    private boolean typicalInrush;

    @Option(
            names = "--typical-inrush-into",
            paramLabel = "FILE",
            description = "The same, and write the project with these values, each marked as guessed; YAML by its"
                    + " ending, else JSON.")
    private String typicalInrushInto;

    AuditCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if (typicalInrushInto != null) {
            Inputs.refuseAsOutput(typicalInrushInto, project, plan);
        }
        Inputs inputs = new Inputs(terminal);
        Reading<Project> read = inputs.project(project);
        Project subject = read.value().orElseThrow();
        Layout layout = Layout.of(subject, inputs.plan(plan, subject).value().orElseThrow());
        if (guessed) {
            terminal.print(terminal.out(), GuessedText.lines(subject, all, terminal.outPaint()));
            return ExitCode.DONE;
        }
        if (typicalInrush || typicalInrushInto != null) {
            return typicalInrush(subject);
        }
        if (nextLoad != null) {
            NextLoadRequest request = NextLoadRequest.of(nextLoad);
            terminal.print(
                    terminal.out(),
                    NextLoadText.lines(layout, request.amps(), request.poles(), all, terminal.outPaint()));
            return ExitCode.DONE;
        }
        Evaluation evaluation = Evaluation.of(layout, () -> Planned.usualBounds(subject));
        AuditSheet sheet = AuditSheet.of(evaluation, read.sha256());
        Inputs.findings(read).forEach(finding -> ShowsFailures.message(terminal.err(), project + ": " + finding));
        List<String> lines =
                asJson ? List.of(Json.of(sheet)) : AuditText.lines(evaluation, sheet, all, terminal.outPaint());
        terminal.print(terminal.out(), lines);
        return ExitCode.of(evaluation.assessment(), strict.isStrict());
    }

    private int typicalInrush(Project subject) {
        if (typicalInrushInto != null) {
            try {
                ProjectFile.write(
                        TypicalInrush.into(subject), Inputs.path(typicalInrushInto), Format.ofName(typicalInrushInto));
            } catch (WriteFailed e) {
                throw new Failure(ExitCode.NOT_WRITTEN, e.getMessage());
            }
        }
        terminal.print(
                terminal.out(),
                TypicalInrushText.lines(subject.name(), TypicalInrush.of(subject), all, terminal.outPaint()));
        return ExitCode.DONE;
    }
}
