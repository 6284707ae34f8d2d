package evenrise.solver.cli;

import evenrise.solver.app.Jobs;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.UsageMessageSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;

/** The command line's way in. */
@Command(
        name = "evenrise",
        header = "Lays out switched, sequenced power for large audio-visual systems.",
        description = "Decides which load sits in which slot and when it comes on, so that phases are balanced and the "
                + "peak at switch-on is low, under rules that always hold.",
        synopsisSubcommandLabel = "COMMAND",
        footer = {
            "%nExamples:",
            "  evenrise plan hall.project.json --time 1m",
            "  evenrise audit hall.project.json hall.plan.json",
            "%n'evenrise COMMAND --help' says more. A plan is a design aid: local code, the authority having",
            "jurisdiction and a licensed professional decide."
        })
public final class Evenrise implements Runnable {
    private static final int HELP_WIDTH = 100;

    @Spec
    private CommandSpec spec;

    @Option(
            names = ShowsFailures.DEBUG,
            scope = ScopeType.INHERIT,
            hidden = true,
            description = "Show where an unexpected failure comes from.")
    private boolean isDebugging;

    private Evenrise() {}

    public static void main(String[] arguments) {
        process(new Jobs(), arguments);
    }

    /** Runs a command and ends the process. */
    static void process(Jobs jobs, String... arguments) {
        Interruption interruption = new Interruption();
        interruption.exit(run(Terminal.ofProcess(), jobs, interruption, arguments));
    }

    /** @return the exit code */
    static int run(Terminal terminal, Jobs jobs, String... arguments) {
        return run(terminal, jobs, new Interruption(), arguments);
    }

    private static int run(Terminal terminal, Jobs jobs, Interruption interruption, String... arguments) {
        int code = ExitCode.BUG;
        try {
            code = commandLine(terminal, jobs, interruption).execute(arguments);
            terminal.flush();
            code = standardOutputFailed(terminal) ? ExitCode.NOT_WRITTEN : code;
        } catch (Error e) {
            code = ShowsFailures.show(e, terminal.err(), List.of(arguments).contains(ShowsFailures.DEBUG));
        } finally {
            interruption.finished(code);
        }
        return code;
    }

    private static boolean standardOutputFailed(Terminal terminal) {
        Optional<IOException> failure = terminal.data().failure();
        if (failure.isEmpty() || terminal.data().isBrokenPipe()) {
            return false;
        }
        ShowsFailures.message(
                terminal.err(),
                "standard output could not be written: " + failure.get().getMessage() + ".");
        return true;
    }

    static CommandLine commandLine(Terminal terminal, Jobs jobs, Interruption interruption) {
        CommandLine root = new CommandLine(new Evenrise())
                .addSubcommand(new PlanCommand(terminal, jobs, interruption))
                .addSubcommand(new DeskCommand(terminal, jobs, interruption))
                .addSubcommand(new AuditCommand(terminal, jobs, interruption))
                .addSubcommand(new ExplainCommand(terminal, jobs))
                .addSubcommand(new WhatIfCommand(terminal, jobs, interruption))
                .addSubcommand(new SizeCommand(terminal, jobs))
                .addSubcommand(new DiffCommand(terminal, jobs))
                .addSubcommand(new PinCommand(terminal, jobs))
                .addSubcommand(new UnpinCommand(terminal, jobs))
                .addSubcommand(new RehearseCommand(terminal, jobs))
                .addSubcommand(new ObserveCommand(terminal, jobs))
                .addSubcommand(new CommissionCommand(terminal, jobs))
                .addSubcommand(new ImportCommand(terminal, jobs))
                .addSubcommand(new ExportCommand(terminal, jobs))
                .addSubcommand(new ReworkCommand(terminal, jobs, interruption))
                .addSubcommand(new CompareCommand(terminal, jobs, interruption))
                .addSubcommand(new PortfolioCommand(terminal, jobs, interruption))
                .addSubcommand(new OfferCommand(terminal, jobs))
                .addSubcommand(new WorkerCommand(terminal, jobs, interruption))
                .addSubcommand(new BillCommand(terminal, jobs))
                .addSubcommand(new CatalogueCommand(terminal, jobs))
                .addSubcommand(new ReportCommand(terminal, jobs))
                .addSubcommand(new GenerateCommand(terminal, jobs))
                .addSubcommand(new SchemaCommand(terminal))
                .addSubcommand(new CompletionCommand(terminal));
        ShowsFailures failures = new ShowsFailures();
        root.setOut(terminal.out())
                .setErr(terminal.err())
                .setUsageHelpWidth(HELP_WIDTH)
                .setColorScheme(CommandLine.Help.defaultColorScheme(terminal.mayColourOut() ? Ansi.ON : Ansi.OFF))
                .setExecutionExceptionHandler(failures)
                .setParameterExceptionHandler(failures);
        standardHelp(root);
        root.getSubcommands().values().forEach(Evenrise::standardHelp);
        return root;
    }

    /** What help looks like, the same for every command. */
    private static void standardHelp(CommandLine command) {
        command.getCommandSpec().mixinStandardHelpOptions(true).versionProvider(new Version());
        UsageMessageSpec help = command.getCommandSpec().usageMessage();
        help.synopsisHeading("%nUsage: ").descriptionHeading("%n");
        help.parameterListHeading("%nFiles:%n")
                .optionListHeading("%nOptions:%n")
                .commandListHeading("%nCommands:%n");
        help.exitCodeListHeading("%nExit codes:%n").exitCodeList(exitCodes(command.getCommandName()));
    }

    private static Map<String, String> exitCodes(String command) {
        return switch (command) {
            case "audit", "rehearse" ->
                ExitCode.texts(
                        ExitCode.DONE,
                        ExitCode.BUG,
                        ExitCode.USAGE,
                        ExitCode.BAD_INPUT,
                        ExitCode.RULES_BROKEN,
                        ExitCode.NOT_WRITTEN,
                        ExitCode.LIMITS_BROKEN);
            case "desk", "explain", "size", "diff", "pin", "unpin", "export" ->
                ExitCode.texts(ExitCode.DONE, ExitCode.BUG, ExitCode.USAGE, ExitCode.BAD_INPUT, ExitCode.NOT_WRITTEN);
            case "schema", "completion", "generate" ->
                ExitCode.texts(ExitCode.DONE, ExitCode.BUG, ExitCode.USAGE, ExitCode.NOT_WRITTEN);
            case "portfolio" ->
                ExitCode.texts(
                        ExitCode.DONE,
                        ExitCode.BUG,
                        ExitCode.USAGE,
                        ExitCode.BAD_INPUT,
                        ExitCode.RULES_BROKEN,
                        ExitCode.NOT_WRITTEN,
                        ExitCode.LIMITS_BROKEN,
                        ExitCode.NO_WORKER,
                        ExitCode.INTERRUPTED);
            case "worker" -> ExitCode.texts(ExitCode.DONE, ExitCode.BUG, ExitCode.USAGE, ExitCode.NO_WORKER);
            default ->
                ExitCode.texts(
                        ExitCode.DONE,
                        ExitCode.BUG,
                        ExitCode.USAGE,
                        ExitCode.BAD_INPUT,
                        ExitCode.RULES_BROKEN,
                        ExitCode.NOT_WRITTEN,
                        ExitCode.LIMITS_BROKEN,
                        ExitCode.INTERRUPTED);
        };
    }

    @Override
    public void run() {
        throw new CommandLine.ParameterException(spec.commandLine(), "no command is given.");
    }

    static final class Version implements IVersionProvider {
        @Override
        public String[] getVersion() {
            return new String[] {"evenrise " + Jobs.version()};
        }
    }
}
