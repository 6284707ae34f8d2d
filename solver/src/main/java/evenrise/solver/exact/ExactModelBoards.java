package evenrise.solver.exact;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.TreeMap;

/** Outputs and settings in the exact model, and the times that follow from them. */
final class ExactModelBoards {
    /** Up to so many clauses the times of outputs have literals of their own, which lets the solver see further. */
    private static final long MOST_CLAUSES = 400_000;

    private static final long LATEST = 1_000_000_000_000L;

    /** An output of a board, from 1. */
    record Output(String board, int number) {}

    private final CpModel model;
    private final Project project;
    private final ExactModelTimes times;
    private final ReachableTimes reachable;
    private final Map<String, Map<Output, BoolVar>> outputs = new LinkedHashMap<>();
    private final Map<Output, Map<Load, BoolVar>> loadsOn = new LinkedHashMap<>();
    private final Map<String, Map<String, BoolVar>> boardOf = new LinkedHashMap<>();
    private final Map<String, Map<Double, BoolVar>> delays = new HashMap<>();
    private final Map<String, Map<Double, BoolVar>> steps = new HashMap<>();
    private final Map<String, List<BoolVar>> lastUsed = new HashMap<>();
    private final Map<String, LinearExpr> begins = new HashMap<>();

    ExactModelBoards(CpModel model, Project project, ExactModelTimes times, ReachableTimes reachable) {
        this.model = model;
        this.project = project;
        this.times = times;
        this.reachable = reachable;
        project.boards()
                .forEach(board -> outputsOf(board).forEach(output -> loadsOn.put(output, new LinkedHashMap<>())));
        project.loads().stream().filter(Load::switched).forEach(this::give);
        project.boards().forEach(this::lastUsed);
        project.boards().forEach(this::run);
    }

    List<Output> outputsOf(Board board) {
        List<Output> all = new ArrayList<>();
        for (int number = 1; number <= reachable.type(board).outputs(); number++) {
            all.add(new Output(board.id(), number));
        }
        return all;
    }

    BoardType type(Board board) {
        return reachable.type(board);
    }

    Map<Output, BoolVar> outputs(Load load) {
        return outputs.get(load.id());
    }

    Map<Double, BoolVar> delays(Board board) {
        return delays.get(board.id());
    }

    Map<Double, BoolVar> steps(Board board) {
        return steps.get(board.id());
    }

    /** Holds where no output of the board is in use. */
    BoolVar idle(Board board) {
        return lastUsed.get(board.id()).get(0);
    }

    /** 1 where one of the loads is on the output. */
    LinearExpr on(Output output, Collection<Load> loads) {
        Map<Load, BoolVar> own = loadsOn.get(output);
        return ExactModelUnits.sum(
                loads.stream().filter(own::containsKey).map(own::get).toList());
    }

    /** 1 where the load is on the board. */
    LinearExpr on(Load load, Board board) {
        BoolVar there = boardOf.get(load.id()).get(board.id());
        return there == null
                ? LinearExpr.constant(0)
                : LinearExpr.newBuilder().add(there).build();
    }

    private void give(Load load) {
        Map<Output, BoolVar> own = new LinkedHashMap<>();
        Map<String, BoolVar> boards = new LinkedHashMap<>();
        for (Board board : project.boards()) {
            List<BoolVar> here = new ArrayList<>();
            for (Output output : outputsOf(board)) {
                if (ReachableTimes.mayUse(load, board, output.number())) {
                    BoolVar literal = model.newBoolVar("");
                    own.put(output, literal);
                    loadsOn.get(output).put(load, literal);
                    here.add(literal);
                }
            }
            if (!here.isEmpty()) {
                BoolVar there = model.newBoolVar("");
                model.addEquality(there, ExactModelUnits.sum(here));
                boards.put(board.id(), there);
            }
        }
        model.addExactlyOne(own.values().toArray(BoolVar[]::new));
        outputs.put(load.id(), own);
        boardOf.put(load.id(), boards);
    }

    /** One literal for each highest used output, the first for none; one load an output besides. */
    private void lastUsed(Board board) {
        List<BoolVar> last = new ArrayList<>();
        last.add(model.newBoolVar(""));
        for (Output output : outputsOf(board)) {
            BoolVar used = model.newBoolVar("");
            model.addEquality(used, ExactModelUnits.sum(loadsOn.get(output).values()));
            BoolVar isLast = model.newBoolVar("");
            last.add(isLast);
            model.addImplication(isLast, used);
            for (int lower = 0; lower < output.number(); lower++) {
                model.addImplication(last.get(lower), used.not());
            }
        }
        model.addExactlyOne(last.toArray(BoolVar[]::new));
        lastUsed.put(board.id(), last);
    }

    /** A board's settings, and with them the times of its loads. */
    private void run(Board board) {
        if (begins.containsKey(board.id())) {
            return;
        }
        LinearExpr begin = begin(board);
        begins.put(board.id(), begin);
        BoardType type = type(board);
        delays.put(board.id(), choice(type.startDelaySeconds()));
        steps.put(board.id(), choice(type.stepSeconds()));
        for (Output output : outputsOf(board)) {
            loadsOn.get(output)
                    .forEach((load, sits) -> model.addEquality(time(board, output), times.on(load))
                            .onlyEnforceIf(sits));
        }
        boolean isFree = board.after().isEmpty();
        long clauses = outputsOf(board).stream()
                .mapToLong(output -> (long) loadsOn.get(output).size()
                        * reachable.of(board, output.number()).size())
                .sum();
        if (isFree && clauses * project.boards().size() < MOST_CLAUSES) {
            outputsOf(board).forEach(output -> literally(board, output));
        }
    }

    /** The same once more, in clauses, for a board that starts with the command. */
    private void literally(Board board, Output output) {
        Map<Long, BoolVar> at = new TreeMap<>();
        NavigableSet<Long> inTime = reachable.of(board, output.number());
        delays(board)
                .forEach((delay, delayed) -> steps(board).forEach((step, stepped) -> {
                    long time = micros(delay) + (output.number() - 1) * micros(step);
                    if (inTime.contains(time)) {
                        both(delayed, stepped, at.computeIfAbsent(time, any -> model.newBoolVar("")));
                    } else {
                        loadsOn.get(output)
                                .values()
                                .forEach(sits ->
                                        model.addBoolOr(new Literal[] {delayed.not(), stepped.not(), sits.not()}));
                    }
                }));
        model.addAtMostOne(at.values().toArray(BoolVar[]::new));
        loadsOn.get(output)
                .forEach((load, sits) -> at.forEach((time, then) -> {
                    BoolVar on = times.instants(load).get(time);
                    if (on == null) {
                        model.addBoolOr(new Literal[] {sits.not(), then.not()});
                    } else {
                        both(sits, then, on);
                    }
                }));
    }

    private void both(BoolVar one, BoolVar other, BoolVar then) {
        model.addBoolOr(new Literal[] {one.not(), other.not(), then});
    }

    private Map<Double, BoolVar> choice(List<Double> offered) {
        Map<Double, BoolVar> own = new LinkedHashMap<>();
        offered.forEach(each -> own.put(each, model.newBoolVar("")));
        model.addExactlyOne(own.values().toArray(BoolVar[]::new));
        return own;
    }

    private LinearExpr time(Board board, Output output) {
        LinearExprBuilder sum = LinearExpr.newBuilder().add(begins.get(board.id()));
        delays(board).forEach((delay, literal) -> sum.addTerm(literal, micros(delay)));
        steps(board).forEach((step, literal) -> sum.addTerm(literal, (output.number() - 1) * micros(step)));
        return sum.build();
    }

    private static long micros(double seconds) {
        return ExactModelUnits.exactly(seconds, ExactModelUnits.PER_SECOND);
    }

    /** 0, or the time of the last used output of the board that it follows, or that one's own beginning. */
    private LinearExpr begin(Board board) {
        if (board.after().isEmpty()) {
            return LinearExpr.constant(0);
        }
        Board prior = project.boards().stream()
                .filter(each -> each.id().equals(board.after().get()))
                .findFirst()
                .orElseThrow();
        run(prior);
        IntVar begin = model.newIntVar(0, LATEST, "");
        List<BoolVar> last = lastUsed.get(prior.id());
        model.addEquality(begin, begins.get(prior.id())).onlyEnforceIf(last.get(0));
        outputsOf(prior)
                .forEach(output ->
                        model.addEquality(begin, time(prior, output)).onlyEnforceIf(last.get(output.number())));
        return LinearExpr.newBuilder().add(begin).build();
    }
}
