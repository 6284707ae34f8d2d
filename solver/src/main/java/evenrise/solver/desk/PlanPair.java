package evenrise.solver.desk;

import evenrise.model.answer.PlanDifference;
import evenrise.model.contract.Decimals;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.rules.Layout;
import evenrise.model.rules.ProjectIndex;
import evenrise.model.rules.Referee;
import evenrise.solver.desk.DeskAnswers.MovedView;
import evenrise.solver.desk.DeskAnswers.SideBySide;

/** Two plans of a project side by side, in figures and in words. */
final class PlanPair {
    private PlanPair() {}

    /** @param one timed, and the other as well */
    static SideBySide of(Plan one, Plan other, ProjectIndex index) {
        PlanDifference difference = PlanDifference.of(one, other);
        return new SideBySide(
                Referee.judge(Layout.of(index, one)).metrics(),
                Referee.judge(Layout.of(index, other)).metrics(),
                difference.loads().stream()
                        .map(each -> new MovedView(
                                each.load(),
                                each.was().map(PlanPair::seat).orElse("no place"),
                                each.now().map(PlanPair::seat).orElse("no place")))
                        .toList(),
                difference.settings().stream()
                        .map(each -> new MovedView(
                                each.board(),
                                each.was().map(PlanPair::setting).orElse("not set"),
                                each.now().map(PlanPair::setting).orElse("not set")))
                        .toList(),
                difference.same());
    }

    private static String seat(Assignment at) {
        return at.panel() + ", slot " + at.slot()
                + at.board()
                        .map(board -> "; " + board + ", output " + at.output().orElse(0))
                        .orElse("")
                + (at.onSeconds().isPresent()
                        ? "; on at " + Decimals.fixed(at.onSeconds().getAsDouble(), 2) + " s"
                        : "");
    }

    private static String setting(BoardSetting at) {
        return at.startDelaySeconds().isEmpty()
                ? "each output by itself"
                : "delay " + Decimals.fixed(at.startDelaySeconds().getAsDouble(), 2) + " s, step "
                        + Decimals.fixed(at.stepSeconds().orElse(0), 2) + " s";
    }
}
