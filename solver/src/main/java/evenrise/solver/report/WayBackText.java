package evenrise.solver.report;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.Phase;
import evenrise.solver.rework.WorkStage;
import evenrise.solver.rework.WorkStepKind;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.Collectors;

/** What to do where a step of a stage fails: where everything was. */
final class WayBackText {
    private WayBackText() {}

    static void into(Section section, Plan before, WorkStage stage) {
        section.text(
                "Stop, and leave locked out what is locked out. Put back what was moved in this stage, as below, and"
                        + " go on from the step that makes ready, with every test. The plant then is as it was before this"
                        + " stage.");
        Map<String, Assignment> seats = new HashMap<>();
        before.assignments().forEach(each -> seats.put(each.load(), each));
        stage.lockedOut().forEach(load -> section.item(load + ": " + place(seats.get(load))));
        Map<String, BoardSetting> settings = new HashMap<>();
        before.boards().forEach(each -> settings.put(each.id(), each));
        stage.steps().stream()
                .filter(step -> step.kind() == WorkStepKind.SET_OUTPUT)
                .map(step -> WorkStepText.output(
                        step.board().orElseThrow(), step.output().orElse(0)))
                .forEach(output -> section.item(output + ": " + timeOf(output, before)));
        stage.steps().stream()
                .filter(step -> step.kind() == WorkStepKind.SET_BOARD)
                .map(step -> settings.get(step.board().orElseThrow()))
                .forEach(was -> section.item("board " + was.id() + ": start delay "
                        + Numbers.seconds(was.startDelaySeconds()) + " s, step " + Numbers.seconds(was.stepSeconds())
                        + " s"));
    }

    private static String timeOf(String output, Plan before) {
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

    private static String place(Assignment seat) {
        if (seat == null) {
            return "it had no breaker: take it out, cap and tag its conductors";
        }
        String phases = seat.phases().stream().map(Phase::name).collect(Collectors.joining(" "));
        return WorkStepText.slot(seat.panel(), seat.slot())
                + (phases.isEmpty() ? "" : ", phase " + phases)
                + seat.board()
                        .map(board ->
                                ", " + WorkStepText.output(board, seat.output().orElse(0)))
                        .orElse("");
    }
}
