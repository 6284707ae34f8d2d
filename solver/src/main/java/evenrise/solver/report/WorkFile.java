package evenrise.solver.report;

import evenrise.solver.rework.Breach;
import evenrise.solver.rework.OrderCost;
import evenrise.solver.rework.WorkOrder;
import evenrise.solver.rework.WorkStage;
import evenrise.solver.rework.WorkStep;
import java.util.ArrayList;
import java.util.List;

/** An order of work for other programs. */
public record WorkFile(
        String format,
        List<String> cautions,
        OrderCost cost,
        boolean isProven,
        List<String> obstacles,
        List<Breach> breaches,
        List<Stage> stages) {
    public static final String FORMAT = "evenrise-work/1";

    /** One stage of it. */
    record Stage(
            int number,
            boolean isSystemOff,
            List<String> deadPanels,
            List<String> deadBoards,
            List<String> lockedOut,
            List<String> standingBy,
            List<String> outages,
            int brokenAfter,
            List<WorkStep> steps) {}

    public static WorkFile of(List<String> cautions, WorkOrder order) {
        List<Stage> stages = new ArrayList<>();
        for (WorkStage each : order.stages()) {
            stages.add(new Stage(
                    stages.size() + 1,
                    each.isSystemOff(),
                    each.deadPanels(),
                    each.deadBoards(),
                    each.lockedOut(),
                    each.standingBy(),
                    each.outages(),
                    each.brokenAfter(),
                    each.steps()));
        }
        return new WorkFile(
                FORMAT, cautions, order.cost(), order.isProven(), order.obstacles(), order.breaches(), stages);
    }
}
