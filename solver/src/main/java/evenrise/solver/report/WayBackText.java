package evenrise.solver.report;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.solver.rework.WorkStage;
import evenrise.solver.rework.WorkStep;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** What to do where a step of a stage fails: how each step before it is undone, the last one first. */
final class WayBackText {
    private final Plan before;
    private final Map<String, String> slots = new HashMap<>();
    private final Map<String, String> outputs = new HashMap<>();
    private final Map<String, BoardSetting> settings = new HashMap<>();
    private final List<String> undone = new ArrayList<>();

    private WayBackText(Plan before) {
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

    static void into(Section section, Plan before, WorkStage stage) {
        section.text(
                "Stop, and leave locked out what is locked out. Undo what was done in this stage, as below, the last step"
                        + " first, and go on from the step that makes ready, with every test. The plant then is as it was"
                        + " before this stage.");
        WayBackText back = new WayBackText(before);
        for (int i = 0; i < stage.steps().size(); i++) {
            back.take("step " + (i + 1) + ": ", stage.steps().get(i));
        }
        Collections.reverse(back.undone);
        back.undone.forEach(section::item);
    }

    private void take(String number, WorkStep step) {
        String load = step.load().orElse("");
        switch (step.kind()) {
            case PARK, RE_TERMINATE, PUT_IN -> {
                String from = slots.put(
                        load,
                        WorkStepText.slot(
                                step.panel().orElseThrow(), step.slot().orElse(0)));
                undone.add(number
                        + load
                        + (from == null
                                ? " had no breaker there: take it out, cap and tag its conductors"
                                : " back to " + from));
            }
            case USE_SPARE -> {
                String at = WorkStepText.slot(
                        step.panel().orElseThrow(), step.slot().orElse(0));
                slots.put(load, at);
                undone.add(number + load + " had no breaker: lift its conductors off the spare in " + at
                        + ", cap and tag them");
            }
            case REMOVE_SPARE ->
                undone.add(number + "spare breaker back into "
                        + WorkStepText.slot(
                                step.panel().orElseThrow(), step.slot().orElse(0)));
            case LEAVE_SPARE -> undone.add(number + "conductors of " + load + " back on " + slots.remove(load));
            case TAKE_OUT, REMOVE -> undone.add(number + load + " back into " + slots.remove(load));
            case LIFT_LEAD, REMOVE_LEAD -> undone.add(number + "lead of " + load + " back on " + outputs.remove(load));
            case RE_LAND -> {
                String to = step.board()
                        .map(board -> WorkStepText.output(board, step.output().orElse(0)))
                        .orElse("");
                String from = to.isEmpty() ? outputs.remove(load) : outputs.put(load, to);
                undone.add(number + "lead of " + load
                        + (from == null
                                ? " had no output: lift it, cap and tag it"
                                : from.equals(to) ? " back to where its breaker was" : " back on " + from));
            }
            case SET_OUTPUT -> {
                String output = WorkStepText.output(
                        step.board().orElseThrow(), step.output().orElse(0));
                undone.add(number + output + ": " + timeOf(output));
            }
            case SET_BOARD -> {
                BoardSetting was = settings.get(step.board().orElseThrow());
                undone.add(number + "board " + was.id() + ": start delay " + Numbers.seconds(was.startDelaySeconds())
                        + " s, step " + Numbers.seconds(was.stepSeconds()) + " s");
            }
            default -> {
                // Switching is undone by the steps that bring all back on.
            }
        }
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
