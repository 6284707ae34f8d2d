package evenrise.model.rules;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.MadeBy;
import evenrise.model.plan.Plan;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Completes a bare plan with everything that follows from it, so that what is written is what the referee says. */
public final class PlanFinisher {
    private PlanFinisher() {}

    /**
     * The plan with phases and times of every assignment, figures, broken rules, cautions and origin. Settings, panels,
     * slots, boards and outputs stay as they are, right or wrong; what follows from a wrong one stays empty.
     *
     * @param bare settings, and assignments with load, panel, slot, board and output; the rest of it is replaced
     * @param bounds what no plan of the project can stay below
     */
    public static Plan finish(Project project, Plan bare, MadeBy madeBy, Bounds bounds) {
        Layout layout = Layout.of(project, signed(project, bare, madeBy));
        return judged(layout, Referee.judge(layout), bounds);
    }

    /** The same without figures: settings and timed assignments, cautions and origin. */
    public static Plan signed(Project project, Plan bare, MadeBy madeBy) {
        Plan timed = timed(project, bare);
        return Plan.builder()
                .cautions(Cautions.ALL)
                .boards(timed.boards())
                .assignments(timed.assignments())
                .madeBy(madeBy)
                .build();
    }

    /** The plan with phases and times of every assignment, and nothing else filled in. */
    public static Plan timed(Project project, Plan bare) {
        return timed(new ProjectIndex(project), bare);
    }

    /** The same with an index that is there already. */
    public static Plan timed(ProjectIndex index, Plan bare) {
        Layout layout = Layout.of(index, bare);
        List<Assignment> assignments = bare.assignments().stream()
                .map(assignment -> finish(assignment, layout))
                .toList();
        return Plan.builder()
                .cautions(bare.cautions())
                .boards(bare.boards())
                .assignments(assignments)
                .madeBy(bare.madeBy())
                .build();
    }

    /** The plan behind {@code layout} with figures, broken rules and bounds; a review of its own stays. */
    public static Plan judged(Layout layout, Verdict verdict, Bounds bounds) {
        Proof proof = Proof.of(verdict, bounds);
        return layout.plan()
                .with()
                .metrics(verdict.metrics())
                .violations(verdict.violations())
                .bounds(bounds)
                .gapPercent(proof.gapPercent())
                .optimal(proof.isOptimal())
                .eventPeaks(layout.eventPeaks().get(0))
                .peakBasis(layout.peakBasis())
                .build();
    }

    private static Assignment finish(Assignment bare, Layout layout) {
        Optional<Load> load = layout.index().load(bare.load());
        List<Phase> phases =
                load.map(found -> layout.places().phasesAt(bare, found.poles())).orElse(List.of());
        OptionalDouble on = layout.onSecondsOf(bare);
        OptionalDouble off = on.isPresent() && load.isPresent()
                ? OptionalDouble.of(layout.clocks().offSeconds(load.get(), on.getAsDouble()))
                : OptionalDouble.empty();
        return bare.with().phases(phases).onSeconds(on).offSeconds(off).build();
    }
}
