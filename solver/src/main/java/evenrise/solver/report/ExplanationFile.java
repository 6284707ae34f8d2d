package evenrise.solver.report;

import evenrise.model.answer.Alternative;
import evenrise.model.answer.LoadAnswer;
import evenrise.model.answer.PlanChange.Way;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Cautions;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Every other place of a load, for other programs.
 *
 * @param format name and version of this sheet as JSON
 * @param now where the plan has it
 * @param everyExchange whether exchanges with loads that are neither in its panel nor on its board were tried
 */
public record ExplanationFile(
        String format,
        String project,
        String load,
        Assignment now,
        List<BrokenRule> violations,
        boolean everyExchange,
        List<Place> places,
        List<String> cautions) {
    public static final String FORMAT = "evenrise-explanation/1";

    /**
     * One change.
     *
     * @param exchangedWith load that gets its place
     * @param setting of its board, where that is what changes
     * @param alike how many places differ in the slot's number alone, this one among them
     * @param breaks what the plan then breaks and does not break now, or by more than now
     * @param mends how many places that the plan breaks are kept then
     * @param objectiveChange the objective then less the objective now
     * @param peakChangeAmps the supply's peak then less its peak now
     */
    public record Place(
            Way way,
            String panel,
            int slot,
            List<Phase> phases,
            Optional<String> board,
            OptionalInt output,
            OptionalDouble onSeconds,
            Optional<String> exchangedWith,
            Optional<BoardSetting> setting,
            int alike,
            List<BrokenRule> breaks,
            int mends,
            double objectiveChange,
            double peakChangeAmps) {

        static Place of(Alternative each) {
            return new Place(
                    each.change().way(),
                    each.seat().panel(),
                    each.seat().slot(),
                    each.phases(),
                    each.seat().board(),
                    each.seat().output(),
                    each.onSeconds(),
                    each.exchangedWith(),
                    each.change().setting(),
                    each.alike(),
                    each.breaks(),
                    each.mends(),
                    each.objectiveChange(),
                    each.peakChangeAmps());
        }
    }

    public static ExplanationFile of(Layout layout, LoadAnswer answer) {
        return new ExplanationFile(
                FORMAT,
                layout.project().name(),
                answer.load().id(),
                answer.load().assignment(),
                answer.broken(),
                answer.everyExchange(),
                answer.alternatives().stream().map(Place::of).toList(),
                Cautions.ALL);
    }
}
