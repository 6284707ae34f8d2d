package evenrise.solver.cli;

import evenrise.model.estimate.BillOfMaterials;
import evenrise.model.file.WholeFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.project.Project;
import evenrise.solver.report.BillText;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "bill",
        header = "List what a project consists of, with prices.",
        description =
                "Panels, boards, breakers and work, counted, with the prices of the project's catalogue. What has "
                        + "no price is listed without one.",
        footer = {"%nExamples:", "  evenrise bill hall.project.json", "  evenrise bill hall.project.json --csv bill.csv"
        })
final class BillCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "PROJECT", description = "Project file; - reads standard input.")
    private String project;

    @Parameters(
            index = "1",
            arity = "0..1",
            paramLabel = "PLAN",
            description = "Plan of it, which is read and checked; it changes no price.")
    private String plan;

    @Option(names = "--csv", paramLabel = "FILE", description = "Write the bill there as a table of values, too.")
    private String csv;

    BillCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if (csv != null) {
            Inputs.refuseAsOutput(csv, project, plan);
        }
        Inputs inputs = new Inputs(terminal);
        Project subject = inputs.project(project).value().orElseThrow();
        if (plan != null) {
            inputs.plan(plan, subject);
        }
        BillOfMaterials bill = BillOfMaterials.of(subject);
        terminal.print(terminal.out(), BillText.lines(subject.name(), bill, terminal.outPaint()));
        if (csv != null) {
            try {
                WholeFile.write(Inputs.path(csv), Csv.of(BillText.values(bill)));
            } catch (WriteFailed e) {
                throw new Failure(ExitCode.NOT_WRITTEN, e.getMessage());
            }
            terminal.print(terminal.out(), List.of("", "Written: " + csv));
        }
        return ExitCode.DONE;
    }
}
