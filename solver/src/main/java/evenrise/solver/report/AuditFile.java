package evenrise.solver.report;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Assessment;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Metrics;
import evenrise.model.plan.PeakBasis;
import evenrise.model.plan.Review;
import evenrise.model.project.TakenDefault;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Everything an audit says of a plan, in the order in which it is said.
 *
 * @param format name and version of this sheet as JSON
 * @param projectChanged whether the project file is another one than the plan was made from; empty where the plan does
 *     not say what it was made from
 * @param eventPeaks what each node peaks at when something happens, the supply first
 * @param guessed what the project says and nobody stated
 * @param peakBasis peaks over the supply's voltages, and what all peaks rest on
 * @param differences figures that the plan states and that do not follow from its assignments
 * @param bounds what no plan of the project can stay below, as proven here; {@code gapPercent} and {@code optimal} by it
 * @param distribution what feeds each node, and how much of it is used
 * @param systems what one command each switches; empty where one switches all
 * @param scenes what each scene uses most, ending with full use; empty where the project states none
 * @param defaults what became of each field of the project's defaults
 * @param notFollowed what the plan file says is proven and this audit does not prove
 */
public record AuditFile(
        String format,
        String project,
        Assessment assessment,
        Optional<Boolean> projectChanged,
        Metrics metrics,
        List<NodeEvents> eventPeaks,
        PeakBasis peakBasis,
        List<BrokenRule> violations,
        List<StatedFigure> differences,
        Bounds bounds,
        OptionalDouble gapPercent,
        boolean optimal,
        List<String> notFollowed,
        List<NodeUse> nodes,
        List<PointUse> distribution,
        List<SystemUse> systems,
        List<SceneLoading> scenes,
        List<BoardUse> boards,
        List<GroupUse> groups,
        List<PeakContribution> peakShares,
        Review review,
        List<GuessedField> guessed,
        List<String> cautions,
        List<TakenDefault> defaults) {

    public static final String FORMAT = "evenrise-audit/1";

    /**
     * @param projectSha256 of the project file at hand
     * @param defaults what became of its defaults
     */
    public static AuditFile of(Evaluation evaluation, String projectSha256, List<TakenDefault> defaults) {
        Layout layout = evaluation.layout();
        Verdict verdict = evaluation.verdict();
        Optional<StatedRewiring> moves = StatedRewiring.of(layout, verdict.metrics());
        StatedProof proof = new StatedProof(evaluation, moves);
        double movesAmps = moves.map(StatedRewiring::amps).orElse(0.0);
        Metrics follows = verdict.metrics().withObjective(verdict.metrics().objective() + movesAmps);
        List<StatedFigure> differences = new ArrayList<>(layout.plan()
                .metrics()
                .map(stated -> StatedFigure.differences(stated, follows))
                .orElse(List.of()));
        differences.addAll(proof.differences());
        return new AuditFile(
                FORMAT,
                layout.project().name(),
                evaluation.assessment(),
                layout.plan().madeBy().map(made -> !made.projectSha256().equalsIgnoreCase(projectSha256)),
                verdict.metrics(),
                NodeEvents.of(layout),
                layout.peakBasis(),
                verdict.violations(),
                List.copyOf(differences),
                evaluation.bounds(),
                evaluation.proof().gapPercent(),
                evaluation.proof().isOptimal(),
                proof.notFollowed(),
                NodeUse.of(layout),
                PointUse.of(layout),
                SystemUse.of(layout),
                SceneLoading.of(layout),
                BoardUse.of(layout),
                GroupUse.of(layout),
                PeakContribution.of(layout, verdict),
                evaluation.review(),
                GuessedField.of(layout.project()),
                Cautions.ALL,
                defaults);
    }
}
