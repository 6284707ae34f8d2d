package evenrise.solver.app;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.report.ReworkText;
import evenrise.solver.report.WorkSheets;
import evenrise.solver.rework.Front;
import evenrise.solver.rework.FrontPoint;
import evenrise.solver.rework.NightLimits;
import evenrise.solver.rework.OtherOrders;
import java.util.List;

/**
 * Moves against objective, and the order of the work towards the plan chosen.
 *
 * @since 0.1.0
 */
public final class ReworkResult implements Listing {
    private final Project project;
    private final List<String> notes;
    private final Front front;
    private final FrontPoint chosen;
    private final Evaluation evaluation;
    private final WorkSheets sheets;
    private final OtherOrders others;
    private final NightLimits night;
    private final boolean wasCancelled;

    ReworkResult(
            Project project,
            List<String> notes,
            Front front,
            FrontPoint chosen,
            Evaluation evaluation,
            WorkSheets sheets,
            OtherOrders others,
            NightLimits night,
            boolean wasCancelled) {
        this.project = project;
        this.notes = List.copyOf(notes);
        this.front = front;
        this.chosen = chosen;
        this.evaluation = evaluation;
        this.sheets = sheets;
        this.others = others;
        this.night = night;
        this.wasCancelled = wasCancelled;
    }

    /** The plan chosen, judged. */
    public Evaluation evaluation() {
        return evaluation;
    }

    /** The plan chosen, as it is written. */
    public Plan plan() {
        return chosen.plan();
    }

    /** Breakers re-terminated and control leads re-landed on the way to the plan chosen. */
    public int moves() {
        return chosen.moves();
    }

    /** Plans of the front, by rising moves. */
    public List<Plan> front() {
        return front.points().stream().map(FrontPoint::plan).toList();
    }

    /** Whether no order of work was found that breaks nothing on the way. */
    public boolean breaksOnTheWay() {
        return !sheets.order().breaches().isEmpty();
    }

    public boolean wasCancelled() {
        return wasCancelled;
    }

    @Override
    public List<String> text(TextStyle style) {
        return ReworkText.lines(project, notes, front, chosen, sheets, others, night, style.paint());
    }
}
