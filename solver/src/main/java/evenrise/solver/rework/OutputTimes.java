package evenrise.solver.rework;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.rules.Layout;
import evenrise.model.rules.ProjectIndex;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How outputs are set that have times of their own: each counts from the begin of its board, so that a board before it that
 * is set otherwise moves when it comes on and not what it is set to.
 */
final class OutputTimes {
    private final ProjectIndex index;
    private final Map<String, Double> seconds = new LinkedHashMap<>();

    private OutputTimes(ProjectIndex index) {
        this.index = index;
    }

    /** Those of the outputs that a plan uses. */
    static OutputTimes of(ProjectIndex index, Plan plan) {
        OutputTimes times = new OutputTimes(index);
        if (times.isUsed()) {
            Layout layout = Layout.of(index, plan);
            for (Board board : index.project().boards()) {
                if (index.typeOf(board).isTimedByOutput()) {
                    double begin = layout.times().beginSeconds(board.id());
                    layout.outputs(board.id())
                            .keySet()
                            .forEach(output -> times.seconds.put(
                                    key(board.id(), output), layout.times().onSeconds(board.id(), output) - begin));
                }
            }
        }
        return times;
    }

    private boolean isUsed() {
        return index.project().boardTypes().stream().anyMatch(type -> type.isTimedByOutput());
    }

    OutputTimes copy() {
        OutputTimes copy = new OutputTimes(index);
        copy.seconds.putAll(seconds);
        return copy;
    }

    static String key(String board, int output) {
        return board + "\n" + output;
    }

    static Optional<String> key(Assignment seat) {
        return seat.board()
                .filter(any -> seat.output().isPresent())
                .map(board -> key(board, seat.output().getAsInt()));
    }

    /** What an output is set to, counted from the begin of its board; empty where nothing is known of it. */
    Optional<Double> seconds(String key) {
        return Optional.ofNullable(seconds.get(key));
    }

    void set(String key, double value) {
        seconds.put(key, value);
    }

    /** Whether an output is to be set otherwise for another plan. */
    boolean differs(OutputTimes target, String key) {
        Double here = seconds.get(key);
        Double there = target.seconds.get(key);
        return there != null && (here == null || Math.abs(here - there) > 1e-6);
    }

    /** The plan with its outputs set so: board after board, since a board may begin when another is done. */
    Plan in(Plan bare) {
        Plan plan = bare;
        for (int round = 0; isUsed() && round <= index.project().boards().size(); round++) {
            Plan next = once(plan);
            if (next.assignments().equals(plan.assignments())) {
                return plan;
            }
            plan = next;
        }
        return plan;
    }

    private Plan once(Plan plan) {
        Layout layout = Layout.of(index, plan);
        List<Assignment> assignments = new ArrayList<>();
        for (Assignment seat : plan.assignments()) {
            Optional<Board> board = seat.board()
                    .flatMap(index::board)
                    .filter(found -> index.typeOf(found).isTimedByOutput());
            Optional<Double> set = key(seat).map(seconds::get);
            assignments.add(
                    board.isPresent() && set.isPresent()
                            ? seat.withOnSeconds(OptionalDouble.of(
                                    layout.times().beginSeconds(board.get().id()) + set.get()))
                            : seat);
        }
        return plan.with().assignments(assignments).build();
    }
}
