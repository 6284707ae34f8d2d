package evenrise.solver.cli;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.event.BothWays;
import evenrise.model.event.EventFinding;
import evenrise.model.event.EventScript;
import evenrise.model.event.Trace;
import evenrise.model.event.Use;
import evenrise.model.file.Reading;
import evenrise.model.file.ScriptFile;
import evenrise.model.file.WholeFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.plan.Cautions;
import evenrise.model.project.Project;
import evenrise.model.project.Scatter;
import evenrise.model.review.Networks;
import evenrise.model.rules.Layout;
import evenrise.model.rules.SupplyVoltage;
import evenrise.model.scatter.NodeScatter;
import evenrise.model.scatter.Trials;
import evenrise.solver.report.AssessmentText;
import evenrise.solver.report.Json;
import evenrise.solver.report.RehearsalCsv;
import evenrise.solver.report.RehearsalText;
import evenrise.solver.report.ScatterSheet;
import evenrise.solver.report.ScatterText;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "rehearse",
        header = "Play what may happen on a plan.",
        description = {
            "Shows what comes on and goes off, and what the supply and every panel draw, when somebody presses on or"
                    + " off, when the mains sag, fail and return, when the emergency contact closes and opens, when a"
                    + " board is dead or a breaker fails. Without --event and --script it plays an ordinary day: on, a"
                    + " brownout, an emergency, off.",
            "An event is [SECONDS:]WORD[=NUMBER][@WHICH]; without a time it happens 5 s after all has come to rest."
                    + " Words: on and off (in scripts system-on, system-off), lock, unlock, emergency, release;"
                    + " group-on@GROUP, group-off@GROUP; mains=PERCENT, of some phases mains=PERCENT@A,B;"
                    + " board-dead@BOARD, board-back@BOARD; stays-closed@LOAD, stays-open@LOAD, late=SECONDS@LOAD,"
                    + " early=SECONDS@LOAD, mended@LOAD."
        },
        footer = {
            "%nExamples:",
            "  evenrise rehearse hall.project.json hall.plan.json",
            "  evenrise rehearse hall.project.json hall.plan.json --event on --event emergency --event release",
            "  evenrise rehearse hall.project.json hall.plan.json -e 0:on -e 60:mains=0 -e 61:mains=100",
            "  evenrise rehearse hall.project.json hall.plan.json --script day.json --trace day.csv",
            "  evenrise rehearse hall.project.json hall.plan.json --trials 100000",
            "%nCurrents are in ampere, instantaneous peaks. Times are in seconds from the script's zero."
        })
final class RehearseCommand implements Callable<Integer> {
    private static final List<String> ORDINARY_DAY =
            List.of("on", "mains=0", "mains=100", "emergency", "release", "off");

    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "PROJECT", description = "Project file; - reads standard input.")
    private String project;

    @Parameters(index = "1", paramLabel = "PLAN", description = "Plan file; - reads standard input.")
    private String plan;

    @ArgGroup
    private Source source;

    @Mixin
    private StrictOption strict;

    @Option(
            names = "--trials",
            paramLabel = "N",
            description =
                    "Instead of events, draw closing times, angles, inrush and voltage of so many switch-ons, and "
                            + "show the percentiles of peaks and dips.")
    private Integer trials;

    @Option(names = "--seed", paramLabel = "N", defaultValue = "1", description = "Seed of the trials. Default: 1.")
    private long seed;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "Threads that share the trials; the result is the same. Default: one for each processor.")
    private Integer threads;

    @Option(
            names = "--trace",
            paramLabel = "FILE",
            description = "Write everything that happens, as JSON, or as CSV where the name ends so.")
    private String trace;

    @Option(
            names = "--idle",
            description = "As if no show ran: what is on draws its idle current. Default: the greater of that and its "
                    + "running current.")
    private boolean idle;

    @Option(names = "--all", description = "Show every breaker and all long lists.")
    private boolean all;

    /** Where the happenings come from: one of the two. */
    static final class Source {
        @Option(
                names = {"-e", "--event"},
                paramLabel = "EVENT",
                description = "Something that happens; may be given several times, in the order of time.")
        private List<String> events;

        @Option(names = "--script", paramLabel = "FILE", description = "Script file with all that happens.")
        private String script;
    }

    RehearseCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if (trace != null) {
            Inputs.refuseAsOutput(trace, project, plan, source == null ? null : source.script);
        }
        Inputs inputs = new Inputs(terminal);
        Reading<Project> read = inputs.project(project);
        Project subject = read.value().orElseThrow();
        Layout layout = Layout.of(subject, inputs.plan(plan, subject).value().orElseThrow());
        Evaluation evaluation = Evaluation.of(layout, () -> Planned.usualBounds(subject));
        if (trials != null) {
            return scatter(evaluation);
        }
        EventScript script = script(subject);
        if (evaluation.assessment().isBroken()) {
            ShowsFailures.message(
                    terminal.err(),
                    plan + ": the plan breaks limits; evenrise audit shows them. The rehearsal plays it as it is.");
        }
        Trace played = BothWays.of(layout, idle ? Use.IDLE : Use.FULL, script);
        if (trace != null) {
            write(played);
        }
        terminal.print(terminal.out(), RehearsalText.lines(evaluation, played, all, terminal.outPaint()));
        boolean isBroken = played.findings().stream().anyMatch(each -> each.grade() == EventFinding.Grade.BROKEN);
        return isBroken ? ExitCode.RULES_BROKEN : ExitCode.of(evaluation.assessment(), strict.isStrict());
    }

    private int scatter(Evaluation evaluation) {
        Layout layout = evaluation.layout();
        if (trials < 1 || source != null) {
            throw new Failure(
                    ExitCode.USAGE,
                    trials < 1
                            ? "--trials is " + trials + ", expected at least 1."
                            : "--trials goes without --event and --script.");
        }
        int side = threads == null ? Runtime.getRuntime().availableProcessors() : Math.max(1, Math.min(64, threads));
        Scatter chances = SupplyVoltage.scatter(layout.project());
        List<NodeScatter> nodes = Trials.of(layout, chances, Networks.of(layout), trials, seed, side);
        String name = layout.project().name();
        if (trace != null) {
            writeText(Json.of(new ScatterSheet(ScatterSheet.FORMAT, name, trials, seed, nodes, Cautions.ALL)) + "\n");
        }
        terminal.print(terminal.out(), AssessmentText.lines(evaluation.assessment(), terminal.outPaint()));
        terminal.print(terminal.out(), List.of(""));
        terminal.print(terminal.out(), ScatterText.lines(name, nodes, trials, seed, all, terminal.outPaint()));
        return ExitCode.of(evaluation.assessment(), strict.isStrict());
    }

    private EventScript script(Project subject) {
        if (source != null && source.script != null) {
            return Inputs.sound(source.script, ScriptFile.read(Inputs.path(source.script), subject))
                    .value()
                    .orElseThrow();
        }
        return source != null
                ? EventWords.script("these events", source.events, subject)
                : EventWords.script("an ordinary day", ORDINARY_DAY, subject);
    }

    private void write(Trace played) {
        boolean isCsv = trace.toLowerCase(Locale.ROOT).endsWith(".csv");
        String text = isCsv ? Csv.of(RehearsalCsv.values(played)) : Json.of(played) + "\n";
        writeText(text);
    }

    private void writeText(String text) {
        try {
            WholeFile.write(Inputs.path(trace), text);
        } catch (WriteFailed e) {
            throw new Failure(ExitCode.NOT_WRITTEN, e.getMessage());
        }
    }
}
