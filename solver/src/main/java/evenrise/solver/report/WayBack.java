package evenrise.solver.report;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.solver.rework.WorkStage;
import evenrise.solver.rework.WorkStep;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** How each step of a stage is undone where one fails. */
final class WayBack {
    private final Plan before;
    private final Map<String, String> slots = new HashMap<>();
    private final Map<String, String> outputs = new HashMap<>();
    private final Map<String, BoardSetting> settings = new HashMap<>();

    private WayBack(Plan before) {
        this.before = before;
        before.boards().forEach(each -> settings.put(each.id(), each));
        for (Assignment seat : before.assignments()) {
            slots.put(seat.load(), WorkStepText.slot(seat.panel(), seat.slot()));
            seat.board()
                    .ifPresent(board -> outputs.put(
                            seat.load(),
                            WorkStepText.output(board, seat.output().orElse(0))));
        }
    }

    /** For each step how it is undone; empty where the steps that bring all back on undo it. */
    static List<Optional<String>> of(Plan before, WorkStage stage) {
        WayBack back = new WayBack(before);
        return stage.steps().stream().map(back::take).toList();
    }

    private Optional<String> take(WorkStep step) {
        String load = step.load().orElse("");
        return switch (step.kind()) {
            case PARK, RE_TERMINATE, PUT_IN -> {
                String from = slots.put(load, place(step));
                yield Optional.of(load
                        + (from == null
                                ? " had no breaker there: take it out, cap and tag its conductors"
                                : " back to " + from));
            }
            case USE_SPARE -> {
                slots.put(load, place(step));
                yield Optional.of(load + " had no breaker: lift its conductors off the spare in " + place(step)
                        + ", cap and tag them");
            }
            case REMOVE_SPARE -> Optional.of("spare breaker back into " + place(step));
            case LEAVE_SPARE -> Optional.of("conductors of " + load + " back on " + slots.remove(load));
            case TAKE_OUT, REMOVE -> Optional.of(load + " back into " + slots.remove(load));
            case LIFT_LEAD, REMOVE_LEAD -> Optional.of("lead of " + load + " back on " + outputs.remove(load));
            case RE_LAND -> {
                String to = step.board()
                        .map(board -> WorkStepText.output(board, step.output().orElse(0)))
                        .orElse("");
                String from = to.isEmpty() ? outputs.remove(load) : outputs.put(load, to);
                yield Optional.of("lead of " + load
                        + (from == null
                                ? " had no output: lift it, cap and tag it"
                                : from.equals(to) ? " back to where its breaker was" : " back on " + from));
            }
            case SET_OUTPUT -> {
                String output = WorkStepText.output(
                        step.board().orElseThrow(), step.output().orElse(0));
                yield Optional.of(output + ": " + timeOf(output));
            }
            case SET_BOARD -> {
                BoardSetting was = settings.get(step.board().orElseThrow());
                yield Optional.of("board " + was.id() + ": start delay " + Numbers.seconds(was.startDelaySeconds())
                        + " s, step " + Numbers.seconds(was.stepSeconds()) + " s");
            }
            default -> Optional.empty();
        };
    }

    private static String place(WorkStep step) {
        return WorkStepText.slot(step.panel().orElseThrow(), step.slot().orElse(0));
    }

    private String timeOf(String output) {
        return before.assignments().stream()
                .filter(each -> each.board()
                        .filter(board -> WorkStepText.output(
                                        board, each.output().orElse(0))
                                .equals(output))
                        .isPresent())
                .findFirst()
                .map(each -> "it came on at " + Numbers.seconds(each.onSeconds()) + " s from the command")
                .orElse("it was not in use");
    }
}
