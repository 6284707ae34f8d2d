package evenrise.solver.tidy;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Review;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.review.ElectricalReview;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.ProjectIndex;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * A plan put in order at no cost. First breakers change slots inside their panel, on the phases that they touch already, so
 * that free slots lie together; then loads that are alike change places, so that their names rise. What an earlier plan
 * has placed stays, and so does what the project pins to a slot or an output. No step is believed: the referee and the
 * electrical review judge the plan before and after, and where either likes the tidier one less it is left.
 */
public final class Tidying {
    /** Sums of the same currents in another order differ by rounding, far below what is written. */
    private static final double ROUNDING = 1e-9;

    private final ProjectIndex index;
    private final Optional<Plan> earlier;
    private final Predicate<Load> isFree;

    /** Judged as a whole: by rules, objective, electrical checks. */
    private record Worth(int broken, double objective, long breaks, long exceeds) {
        boolean isNoBetterThan(Worth other) {
            return broken >= other.broken
                    && objective >= other.objective - ROUNDING * Math.max(1, other.objective)
                    && breaks >= other.breaks
                    && exceeds >= other.exceeds;
        }
    }

    private Tidying(Project project, Optional<Plan> earlier, boolean keepsEarlier) {
        this.index = new ProjectIndex(project);
        this.earlier = earlier;
        Set<String> placed = earlier.filter(plan -> keepsEarlier).stream()
                .flatMap(plan -> plan.assignments().stream())
                .map(Assignment::load)
                .collect(Collectors.toSet());
        this.isFree = load -> !placed.contains(load.id()) && !isPinned(load.fixed());
    }

    /**
     * The plan in order, bare.
     *
     * @param bare settings, and assignments with load, panel, slot, board and output
     * @param earlier a plan that moves are counted from; costs of moves count in the objective
     * @param keepsEarlier whether what {@code earlier} has placed stays where it is
     */
    public static Plan of(Project project, Plan bare, Optional<Plan> earlier, boolean keepsEarlier) {
        return new Tidying(project, earlier, keepsEarlier).tidied(bare);
    }

    private Plan tidied(Plan bare) {
        Project project = index.project();
        Plan timed = PlanFinisher.timed(project, bare);
        List<List<String>> alike = AlikeLoads.of(project, isFree);
        RisingNames names = new RisingNames(new PlaceOrder(project));
        Plan gathered = GatheredSlots.of(Layout.of(index, timed), alike, isFree);
        Worth before = worth(timed);
        for (Plan tidier : List.of(names.of(gathered, alike), names.of(timed, alike))) {
            if (!tidier.equals(timed) && before.isNoBetterThan(worth(tidier))) {
                return tidier;
            }
        }
        return bare;
    }

    private Worth worth(Plan plan) {
        Layout layout = Layout.of(index, PlanFinisher.timed(index.project(), plan));
        Verdict verdict = Referee.judge(layout, earlier);
        Review review = ElectricalReview.of(layout, earlier);
        return new Worth(
                verdict.violations().size(),
                verdict.metrics().objective(),
                review.count(Grade.BREAKS),
                review.count(Grade.EXCEEDS_RECOMMENDATION));
    }

    private static boolean isPinned(FixedPlace place) {
        return place.slot().isPresent()
                || place.output().isPresent()
                || place.onSeconds().isPresent();
    }
}
