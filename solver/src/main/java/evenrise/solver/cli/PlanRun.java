package evenrise.solver.cli;

import evenrise.model.file.Reading;
import evenrise.model.plan.MadeBy;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.report.Numbers;
import evenrise.solver.report.Paint;
import evenrise.solver.report.SearchFacts;
import evenrise.solver.report.SummaryText;
import java.io.PrintWriter;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/** One search from request to written plan; an interrupt shortens the search and nothing else. */
final class PlanRun {
    private final Terminal terminal;
    private final PlannerSource planners;
    private final boolean isQuiet;

    PlanRun(Terminal terminal, PlannerSource planners, boolean isQuiet) {
        this.terminal = terminal;
        this.planners = planners;
        this.isQuiet = isQuiet;
    }

    /** @return the exit code */
    int run(Reading<Project> project, PlanningRequest request, PlanTarget target) {
        ProgressView view = ProgressView.of(terminal, isQuiet, System::nanoTime);
        PlannerSource.Search search = planners.search(request, view::report);
        Interruption interruption = new Interruption(search::stop);
        int code = ExitCode.BUG;
        try {
            PlanningOutcome outcome;
            try (view) {
                outcome = search.plan();
            }
            code = finish(project, request, target, outcome, interruption.happened());
            return code;
        } catch (Failure failure) {
            code = ShowsFailures.show(failure, terminal.err(), false);
            return code;
        } finally {
            terminal.flush();
            interruption.finished(code);
        }
    }

    private int finish(
            Reading<Project> project,
            PlanningRequest request,
            PlanTarget target,
            PlanningOutcome outcome,
            boolean wasInterrupted) {
        Plan plan = PlanFinisher.finish(request.project(), outcome.plan(), madeBy(project, request, outcome));
        Verdict verdict = Referee.judge(request.project(), plan);
        target.write(plan, terminal);
        if (!isQuiet) {
            summarise(project, request, target, outcome, wasInterrupted, plan, verdict);
        } else if (!verdict.violations().isEmpty()) {
            ShowsFailures.message(
                    terminal.err(),
                    "the plan breaks hard rules in "
                            + Numbers.counted(verdict.violations().size(), "place") + "; audit it to see where.");
        }
        if (wasInterrupted) {
            return ExitCode.INTERRUPTED;
        }
        return verdict.violations().isEmpty() ? ExitCode.DONE : ExitCode.RULES_BROKEN;
    }

    private void summarise(
            Reading<Project> project,
            PlanningRequest request,
            PlanTarget target,
            PlanningOutcome outcome,
            boolean wasInterrupted,
            Plan plan,
            Verdict verdict) {
        PrintWriter writer = target.isStream() ? terminal.err() : terminal.out();
        Paint paint = target.isStream() ? terminal.errPaint() : terminal.outPaint();
        SearchFacts facts = new SearchFacts(
                outcome.seconds(),
                outcome.moves(),
                request.seed(),
                request.threads(),
                outcome.firstFeasibleSeconds(),
                wasInterrupted);
        terminal.print(
                writer, SummaryText.lines(request.project(), Inputs.findings(project), plan, verdict, facts, paint));
        terminal.print(writer, target.written());
    }

    private static MadeBy madeBy(Reading<Project> project, PlanningRequest request, PlanningOutcome outcome) {
        boolean byMoves = request.budget() instanceof Budget.Moves;
        return new MadeBy(
                Evenrise.Version.ofThisProgram(),
                project.sha256(),
                request.seed(),
                request.threads(),
                request.budget() instanceof Budget.Moves moves ? OptionalLong.of(moves.limit()) : OptionalLong.empty(),
                byMoves ? OptionalDouble.empty() : OptionalDouble.of(outcome.seconds()));
    }
}
