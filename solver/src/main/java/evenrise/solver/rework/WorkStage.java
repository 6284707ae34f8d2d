package evenrise.solver.rework;

import evenrise.model.plan.Plan;
import java.util.List;

/**
 * Work that is done in one go. After it the plant is whole: it can run, and the next stage can wait.
 *
 * @param isSystemOff whether everything that boards switch is off meanwhile, by command
 * @param deadPanels panels that are isolated meanwhile
 * @param deadBoards boards that are isolated beside those in these panels
 * @param lockedOut loads that are worked on
 * @param standingBy loads that are off besides, by their panel or board or by what they need, and by no command
 * @param outages shutdown groups of which a load is off; loads without a group are together the one without a name
 * @param after the plant as it is afterwards, with phases and times
 * @param brokenAfter places where the plant breaks a hard rule then
 * @param deadBelow panels and nodes that are dead besides, since an isolated panel feeds them
 * @param systemsOff systems that are off by their commands; none where one command is for all
 * @param stepMinutes how long each step takes one crew, by its kind
 */
public record WorkStage(
        boolean isSystemOff,
        List<String> deadPanels,
        List<String> deadBoards,
        List<String> lockedOut,
        List<String> standingBy,
        List<String> outages,
        List<WorkStep> steps,
        Plan after,
        int brokenAfter,
        List<String> deadBelow,
        List<String> systemsOff,
        List<Double> stepMinutes) {
    public WorkStage {
        deadPanels = List.copyOf(deadPanels);
        deadBoards = List.copyOf(deadBoards);
        lockedOut = List.copyOf(lockedOut);
        standingBy = List.copyOf(standingBy);
        outages = List.copyOf(outages);
        steps = List.copyOf(steps);
        deadBelow = List.copyOf(deadBelow);
        systemsOff = List.copyOf(systemsOff);
        stepMinutes = List.copyOf(stepMinutes);
    }

    /** Where no panel feeds others, no system has a command of its own, and nobody asks how long it takes. */
    public WorkStage(
            boolean isSystemOff,
            List<String> deadPanels,
            List<String> deadBoards,
            List<String> lockedOut,
            List<String> standingBy,
            List<String> outages,
            List<WorkStep> steps,
            Plan after,
            int brokenAfter) {
        this(
                isSystemOff,
                deadPanels,
                deadBoards,
                lockedOut,
                standingBy,
                outages,
                steps,
                after,
                brokenAfter,
                List.of(),
                List.of(),
                List.of());
    }

    /** How long the stage takes, and so how long those are out that are off in it. */
    public double minutes() {
        return stepMinutes.stream().mapToDouble(Double::doubleValue).sum();
    }
}
