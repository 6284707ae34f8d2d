package evenrise.solver.engine;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import evenrise.model.plan.BoardSetting;
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
import java.util.NavigableMap;
import java.util.TreeMap;

/**
 * Outputs, settings and switch-on times in the exact model. What a board can do is finite, so every time that can occur,
 * in milliseconds, has a literal.
 */
final class ExactModelTimes {
    /** An output of a board, from 1. */
    record Output(String board, int number) {}

    private final CpModel model;
    private final Project project;
    private final Map<String, Map<Output, BoolVar>> outputs = new LinkedHashMap<>();
    private final Map<String, NavigableMap<Long, BoolVar>> instants = new LinkedHashMap<>();
    private final Map<String, Map<BoardSetting, BoolVar>> settings = new LinkedHashMap<>();
    private final Map<String, List<BoolVar>> lastUsed = new HashMap<>();
    private final Map<String, Map<Long, BoolVar>> begins = new HashMap<>();
    private final Map<Output, Map<Long, BoolVar>> ons = new LinkedHashMap<>();

    ExactModelTimes(CpModel model, Project project) {
        this.model = model;
        this.project = project;
        project.loads().stream().filter(Load::switched).forEach(this::give);
        project.boards().forEach(this::lastUsed);
        project.boards().forEach(this::run);
        project.loads().stream().filter(Load::switched).forEach(this::time);
    }

    BoardType type(Board board) {
        return project.boardTypes().stream()
                .filter(type -> type.id().equals(board.type()))
                .findFirst()
                .orElseThrow();
    }

    Map<Output, BoolVar> outputs(Load load) {
        return outputs.get(load.id());
    }

    Map<BoardSetting, BoolVar> settings(Board board) {
        return settings.get(board.id());
    }

    /** Holds where no output of the board is in use. */
    BoolVar idle(Board board) {
        return lastUsed.get(board.id()).get(0);
    }

    /** Literals that tell when the load comes on, exactly one of which holds; none for an unswitched load. */
    NavigableMap<Long, BoolVar> instants(Load load) {
        return instants.getOrDefault(load.id(), new TreeMap<>());
    }

    /** When a switched load comes on, plus {@code later} milliseconds. */
    LinearExpr on(Load load, long later) {
        LinearExprBuilder sum = LinearExpr.newBuilder().add(later);
        instants(load).forEach((time, literal) -> sum.addTerm(literal, time));
        return sum.build();
    }

    /** 1 where one of the loads is on the output. */
    LinearExpr on(Output output, Collection<Load> loads) {
        return ExactModelUnits.sum(loads.stream()
                .filter(load -> outputs.getOrDefault(load.id(), Map.of()).containsKey(output))
                .map(load -> outputs(load).get(output))
                .toList());
    }

    /** 1 where the load is on the board. */
    LinearExpr on(Load load, Board board) {
        return ExactModelUnits.sum(outputs(load).entrySet().stream()
                .filter(each -> each.getKey().board().equals(board.id()))
                .map(Map.Entry::getValue)
                .toList());
    }

    private void give(Load load) {
        Map<Output, BoolVar> own = new LinkedHashMap<>();
        for (Board board : project.boards()) {
            for (int number = 1; number <= type(board).outputs(); number++) {
                if (load.fixed().board().orElse(board.id()).equals(board.id())
                        && load.fixed().output().orElse(number) == number) {
                    Output output = new Output(board.id(), number);
                    own.put(output, model.newBoolVar(load.id() + " on " + output));
                }
            }
        }
        model.addExactlyOne(own.values().toArray(BoolVar[]::new));
        outputs.put(load.id(), own);
    }

    /** One literal for each highest used output, the first for none; one load an output besides. */
    private void lastUsed(Board board) {
        int count = type(board).outputs();
        List<BoolVar> last = new ArrayList<>();
        for (int number = 0; number <= count; number++) {
            last.add(model.newBoolVar(board.id() + " used to " + number));
        }
        model.addExactlyOne(last.toArray(BoolVar[]::new));
        for (int number = 1; number <= count; number++) {
            BoolVar used = model.newBoolVar(board.id() + " output " + number);
            model.addEquality(used, on(new Output(board.id(), number), project.loads()));
            model.addImplication(last.get(number), used);
            for (int lower = 0; lower < number; lower++) {
                model.addImplication(last.get(lower), used.not());
            }
        }
        lastUsed.put(board.id(), last);
    }

    /** A setting, and with it the times of all outputs, for each time at which the board may begin. */
    private void run(Board board) {
        if (begins.containsKey(board.id())) {
            return;
        }
        begins.put(board.id(), beginnings(board));
        Map<BoardSetting, BoolVar> own = new LinkedHashMap<>();
        BoardType type = type(board);
        for (double delay : type.startDelaySeconds()) {
            for (double step : type.stepSeconds()) {
                BoardSetting setting = new BoardSetting(board.id(), delay, step);
                own.put(setting, model.newBoolVar(setting.toString()));
            }
        }
        model.addExactlyOne(own.values().toArray(BoolVar[]::new));
        settings.put(board.id(), own);
        for (int number = 1; number <= type.outputs(); number++) {
            Output output = new Output(board.id(), number);
            Map<Long, BoolVar> on = new TreeMap<>();
            begins.get(board.id())
                    .forEach((begin, begun) -> own.forEach((setting, set) -> {
                        long delay = ExactModelUnits.exactly(setting.startDelaySeconds(), ExactModelUnits.PER_SECOND);
                        long step = ExactModelUnits.exactly(setting.stepSeconds(), ExactModelUnits.PER_SECOND);
                        long time = begin + delay + (output.number() - 1) * step;
                        both(begun, set, literal(on, output + " at ", time));
                    }));
            model.addExactlyOne(on.values().toArray(BoolVar[]::new));
            ons.put(output, on);
        }
    }

    /** 0, or each time at which the board that it follows may be done. */
    private Map<Long, BoolVar> beginnings(Board board) {
        Map<Long, BoolVar> own = new TreeMap<>();
        if (board.after().isEmpty()) {
            literal(own, board.id() + " begins at ", 0);
        } else {
            Board prior = project.boards().stream()
                    .filter(each -> each.id().equals(board.after().get()))
                    .findFirst()
                    .orElseThrow();
            run(prior);
            List<BoolVar> last = lastUsed.get(prior.id());
            for (int number = 0; number < last.size(); number++) {
                BoolVar used = last.get(number);
                Map<Long, BoolVar> ends =
                        number == 0 ? begins.get(prior.id()) : ons.get(new Output(prior.id(), number));
                ends.forEach((time, at) -> both(used, at, literal(own, board.id() + " begins at ", time)));
            }
        }
        model.addExactlyOne(own.values().toArray(BoolVar[]::new));
        return own;
    }

    private void time(Load load) {
        NavigableMap<Long, BoolVar> own = new TreeMap<>();
        outputs(load)
                .forEach((output, sits) -> ons.get(output)
                        .forEach((time, at) -> both(sits, at, literal(own, load.id() + " comes on at ", time))));
        model.addExactlyOne(own.values().toArray(BoolVar[]::new));
        instants.put(load.id(), own);
    }

    private BoolVar literal(Map<Long, BoolVar> own, String name, long time) {
        return own.computeIfAbsent(time, any -> model.newBoolVar(name + time));
    }

    /** {@code then} is one of several literals of which exactly one holds; that makes this an equivalence. */
    private void both(BoolVar one, BoolVar other, BoolVar then) {
        model.addBoolOr(new Literal[] {one.not(), other.not(), then});
    }
}
