package evenrise.solver.cli;

import evenrise.solver.app.AuditRequest;
import evenrise.solver.app.AuditResult;
import evenrise.solver.app.Cancellation;
import evenrise.solver.app.Effort;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.Listing;
import evenrise.solver.app.NextLoadRequest;
import evenrise.solver.app.Source;
import evenrise.solver.app.TypicalInrushRequest;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

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
            "  evenrise audit hall.project.json hall.plan.json --from built.plan.json     what has moved",
            "  evenrise audit hall.project.json hall.plan.json --prove 10m     how good it is at best",
            "  evenrise audit hall.project.json hall.plan.json --next-load 16:2",
            "  evenrise audit hall.project.json hall.plan.json --guessed     what is to be confirmed",
            "  evenrise audit hall.project.json hall.plan.json --typical-inrush",
            "%nCurrents are in ampere: running and neutral currents rms, peaks instantaneous. Times are in seconds."
        })
final class AuditCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Jobs jobs;
    private final Interruption interruption;

    @Spec
    private CommandSpec spec;

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
            names = "--from",
            paramLabel = "EARLIER",
            description = "Earlier plan of this project: count what has moved since, and its cost in the objective.")
    private String from;

    @Option(
            names = "--prove",
            paramLabel = "TIME",
            converter = Durations.class,
            description =
                    "Prove so long how near the plan is to the best there could be; ends sooner where nothing is left"
                            + " to prove, or with Ctrl-C.")
    private Duration proving;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "With --prove: threads. Default: one for each processor, at most 8.")
    private Integer threads;

    @Option(
            names = "--proof",
            paramLabel = "FILE",
            description =
                    "With --prove: keep in FILE what is proven, and go on from what it holds, which is taken as said.")
    private Path proofFile;

    @Option(
            names = "--next-load",
            paramLabel = "A[:POLES]",
            converter = NextLoadConverter.class,
            description = "Instead of the audit, show where one more load of so many ampere could go; one pole unless "
                    + "told otherwise.")
    private NextLoadConverter.Asked nextLoad;

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

    AuditCommand(Terminal terminal, Jobs jobs, Interruption interruption) {
        this.terminal = terminal;
        this.jobs = jobs;
        this.interruption = interruption;
    }

    @Override
    public Integer call() {
        AuditRequest request = new AuditRequest(
                terminal.source(project),
                terminal.source(plan),
                Optional.ofNullable(from).map(terminal::source),
                proof(),
                Optional.ofNullable(proofFile));
        Optional<Listing> instead = instead(request);
        if (instead.isPresent()) {
            terminal.print(terminal.out(), instead.get().text(terminal.outStyle(all)));
            return ExitCode.DONE;
        }
        AuditResult result = jobs.audit(
                request, ProgressView.control(terminal, false, proving == null ? Cancellation.NEVER : interruption));
        terminal.print(terminal.out(), asJson ? List.of(result.json()) : result.text(terminal.outStyle(all)));
        return ExitCode.of(result.evaluation().assessment(), strict.isStrict());
    }

    private Optional<Effort> proof() {
        if (threads != null && proving == null) {
            throw new ParameterException(spec.commandLine(), "--threads is for a proof. Say --prove TIME as well.");
        }
        if (proofFile != null && proving == null) {
            throw new ParameterException(spec.commandLine(), "--proof is for a proof. Say --prove TIME as well.");
        }
        return Optional.ofNullable(proving)
                .map(time -> BudgetOptions.effort(spec.commandLine(), time, null, 1, threads));
    }

    /** What is asked for in place of the audit. */
    private Optional<Listing> instead(AuditRequest request) {
        if (guessed) {
            return Optional.of(jobs.guessed(request));
        }
        if (typicalInrush || typicalInrushInto != null) {
            return Optional.of(jobs.typicalInrush(new TypicalInrushRequest(
                    request.project(),
                    request.plan(),
                    Optional.ofNullable(typicalInrushInto).map(Source::path))));
        }
        return Optional.ofNullable(nextLoad)
                .map(load -> jobs.nextLoad(
                        new NextLoadRequest(request.project(), request.plan(), load.amps(), load.poles())));
    }
}
