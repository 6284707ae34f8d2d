package evenrise.model;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import java.util.ArrayList;
import java.util.List;

/** A plan's boards and assignments; metrics, violations and origin are left out. */
public final class PlanBuilder {
    private final List<BoardSetting> boards = new ArrayList<>();
    private final List<Assignment> assignments = new ArrayList<>();

    PlanBuilder() {}

    public PlanBuilder board(String id, double startDelaySeconds, double stepSeconds) {
        boards.add(new BoardSetting(id, startDelaySeconds, stepSeconds));
        return this;
    }

    public PlanBuilder assignments(AssignmentBuilder... more) {
        for (AssignmentBuilder assignment : more) {
            assignments.add(assignment.build());
        }
        return this;
    }

    public Plan build() {
        return Plan.builder().boards(boards).assignments(assignments).build();
    }
}
