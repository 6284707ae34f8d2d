package evenrise.solver.app;

import evenrise.model.check.Severity;
import evenrise.model.contract.Phrase;
import evenrise.model.file.Problem;
import evenrise.model.file.Reading;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;

/** Reads what a job works on, and fails with every problem of it. */
final class Inputs {
    private static final int MOST_NAMED = 12;

    private Inputs() {}

    /** @param note takes what is left out of account */
    static Reading<Project> project(Source source, Consumer<String> note) {
        return told(source.name(), source.project(), note);
    }

    /** A plan of this project. */
    static Reading<Plan> plan(Source source, Project project, Consumer<String> note) {
        return told(source.name(), source.plan(project), note);
    }

    /** A plan, whatever its project. */
    static Plan plan(Source source, Consumer<String> note) {
        return told(source.name(), source.plan(), note).value().orElseThrow();
    }

    /**
     * A plan to start at, maybe of an earlier state of the project: what of it fits no longer is left out, and said.
     *
     * @param note takes what is said
     */
    static Plan earlierPlan(Source source, Project project, Consumer<String> note) {
        Reading<Plan> read = told(source.name(), source.plan(), note);
        KeptNotes.sayLeftBehind(source.name(), read.notes(), note);
        Plan plan = read.value().orElseThrow();
        List<String> loads = project.loads().stream().map(Load::id).toList();
        List<String> boards = project.boards().stream().map(Board::id).toList();
        List<String> had = plan.assignments().stream().map(Assignment::load).toList();
        List<String> hadBoards = plan.boards().stream().map(BoardSetting::id).toList();
        Consumer<String> ofPlan = text -> note.accept(source.name() + ": " + text);
        named("load", "of this plan not in the project, and left out", missing(had, loads), ofPlan);
        named("board", "of this plan not in the project, and left out", missing(hadBoards, boards), ofPlan);
        named("load", "of the project new, without a place in this plan", missing(loads, had), ofPlan);
        return plan;
    }

    private static List<String> missing(List<String> some, List<String> among) {
        Set<String> known = Set.copyOf(among);
        return some.stream().filter(each -> !known.contains(each)).distinct().toList();
    }

    private static void named(String noun, String what, List<String> ids, Consumer<String> note) {
        if (!ids.isEmpty()) {
            note.accept(Phrase.counted(ids.size(), noun) + " " + what + ": " + Phrase.quoted(ids, MOST_NAMED) + ".");
        }
    }

    /** What is well-formed but cannot come out well. */
    static List<String> findings(Reading<?> reading) {
        return reading.problems().stream()
                .filter(problem -> problem.severity() == Severity.IMPOSSIBLE)
                .map(Problem::message)
                .toList();
    }

    /** The same as {@link #sound}; says what of the file is left out of account. */
    static <T> Reading<T> told(String name, Reading<T> reading, Consumer<String> note) {
        sound(name, reading).problems().stream()
                .filter(problem -> problem.severity() == Severity.REMARK)
                .forEach(problem -> note.accept(named(name, problem)));
        return reading;
    }

    /** @throws JobFailed that lists every problem */
    static <T> Reading<T> sound(String name, Reading<T> reading) {
        if (reading.value().isEmpty()) {
            throw new JobFailed(
                    JobFailed.Reason.INPUT,
                    reading.problems().stream()
                            .map(problem -> named(name, problem))
                            .toList());
        }
        return reading;
    }

    /** The message, with the file in front where it does not name the file itself. */
    private static String named(String name, Problem problem) {
        String message = problem.message();
        return message.contains(Phrase.quoted(name)) ? message : name + ": " + message;
    }
}
