package evenrise.solver.document;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.rules.Layout;
import java.util.List;

/** A plan as its documents show it, to be held beside an earlier one. */
record PlanState(Evaluation evaluation, DocumentTables tables, List<Schedule> schedules, List<Diagram> diagrams) {
    Layout layout() {
        return evaluation.layout();
    }
}
