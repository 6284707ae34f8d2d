package evenrise.solver.cli;

import evenrise.model.answer.Supposition;
import evenrise.model.project.Role;
import evenrise.solver.app.FewMoves;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.WhatIfRequest;
import evenrise.solver.app.WhatIfResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
        name = "whatif",
        header = "Say what would become of a plan if something were otherwise.",
        description =
                "Plans the project as it would be, near the plan as it is, and says whether a plan that keeps every"
                        + " rule was found, what it costs and how much moves. Nothing is written. What is given together is"
                        + " supposed together.",
        footer = {
            "%nExamples:",
            "  evenrise whatif hall.project.json hall.plan.json --without P3",
            "  evenrise whatif hall.project.json hall.plan.json --add 16:1:amplifier --time 1m",
            "  evenrise whatif hall.project.json hall.plan.json --limit supply=250 --full P1"
        })
final class WhatIfCommand implements Callable<Integer> {
    private static final Pattern ADDED =
            Pattern.compile("(\\d+(?:\\.\\d+)?)(?::([123]))?(?::(processing|auxiliary|amplifier))?");
    private static final Pattern LIMIT = Pattern.compile("(.+)=(\\d+(?:\\.\\d+)?)");

    private final Terminal terminal;
    private final Jobs jobs;
    private final Interruption interruption;

    @Spec
    private CommandSpec spec;

    @Mixin
    private BudgetOptions budget;

    @Parameters(index = "0", paramLabel = "PROJECT", description = "Project file; - reads standard input.")
    private String project;

    @Parameters(index = "1", paramLabel = "PLAN", description = "Plan file; - reads standard input.")
    private String plan;

    @Option(
            names = "--without",
            paramLabel = "PANEL",
            description = "Without this panel and the boards in it; may be given again.")
    private List<String> without = new ArrayList<>();

    @Option(
            names = "--full",
            paramLabel = "PANEL",
            description = "With others in every slot of this panel that the plan leaves free; may be given again.")
    private List<String> full = new ArrayList<>();

    @Option(
            names = "--add",
            paramLabel = "A[:POLES[:ROLE]]",
            description =
                    "With one load more of so many ampere; one pole and not switched unless told otherwise; may be"
                            + " given again. Its inrush is taken as none.")
    private List<String> added = new ArrayList<>();

    @Option(
            names = "--limit",
            paramLabel = "NODE=A",
            description = "With this inrush limit at the supply or a panel; may be given again.")
    private List<String> limits = new ArrayList<>();

    @Option(
            names = "--max-moves",
            paramLabel = "N",
            description = "Move at most so many breakers and control leads. Default: as many as it takes.")
    private Integer maxMoves;

    @Option(
            names = "--per-move",
            paramLabel = "A",
            defaultValue = "1",
            description = "What each such move costs, in ampere-equivalents of the objective. Default: 1.")
    private double perMove;

    WhatIfCommand(Terminal terminal, Jobs jobs, Interruption interruption) {
        this.terminal = terminal;
        this.jobs = jobs;
        this.interruption = interruption;
    }

    @Override
    public Integer call() {
        WhatIfResult result = jobs.whatIf(
                new WhatIfRequest(
                        terminal.source(project),
                        terminal.source(plan),
                        suppositions(),
                        budget.effort(spec.commandLine()),
                        few()),
                ProgressView.control(terminal, false, interruption));
        terminal.print(terminal.out(), result.text(terminal.outStyle(true)));
        return result.keepsEveryRule() ? ExitCode.DONE : ExitCode.RULES_BROKEN;
    }

    private FewMoves few() {
        try {
            return new FewMoves(
                    maxMoves == null ? OptionalInt.empty() : OptionalInt.of(maxMoves), OptionalDouble.of(perMove));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(
                    spec.commandLine(), "--max-moves is at least 0, and --per-move from 0 to 1e9: " + e.getMessage());
        }
    }

    private List<Supposition> suppositions() {
        List<Supposition> all = new ArrayList<>();
        without.forEach(panel -> all.add(new Supposition.Without(panel)));
        full.forEach(panel -> all.add(new Supposition.Full(panel)));
        for (String text : added) {
            Matcher asked = matched(ADDED, text, "--add", "such as 16, 16:2 or 16:1:amplifier");
            all.add(new Supposition.Added(
                    Double.parseDouble(asked.group(1)),
                    asked.group(2) == null ? 1 : Integer.parseInt(asked.group(2)),
                    Optional.ofNullable(asked.group(3)).map(role -> Role.valueOf(role.toUpperCase(Locale.ROOT)))));
        }
        for (String text : limits) {
            Matcher asked = matched(LIMIT, text, "--limit", "such as supply=250");
            all.add(new Supposition.Limited(asked.group(1), Double.parseDouble(asked.group(2))));
        }
        return all;
    }

    private Matcher matched(Pattern pattern, String text, String option, String expected) {
        Matcher matcher = pattern.matcher(text);
        if (!matcher.matches()) {
            throw new ParameterException(spec.commandLine(), option + " is '" + text + "', expected " + expected + ".");
        }
        return matcher;
    }
}
