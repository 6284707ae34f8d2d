package evenrise.solver.rework;

import evenrise.model.project.Load;
import evenrise.model.rules.Rotation;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;

/** What goes off before a stage's work, and comes on, tested, after it. */
final class SwitchingSteps {
    private final StageWork work;
    private final Passage passage;
    private final Passage.Way way;
    private final List<WorkStep> steps;

    SwitchingSteps(StageWork work, List<WorkStep> steps) {
        this.work = work;
        this.passage = work.passage;
        this.way = work.way;
        this.steps = steps;
    }

    /** Last on, first off; then nothing in a panel that is worked on has voltage. */
    void off() {
        List<String> lastFirstOff = new ArrayList<>(way.systemsOff());
        Collections.reverse(lastFirstOff);
        command(WorkStepKind.SYSTEM_OFF, lastFirstOff);
        Comparator<String> lastFirst = Comparator.comparingDouble((String load) ->
                        work.before.containsKey(load) ? Passage.on(work.before.get(load)) : Double.NEGATIVE_INFINITY)
                .reversed()
                .thenComparing(load -> !isBehindAnother(load));
        way.off().stream()
                .filter(load -> isWorkedOn(load) || !passage.isByCommand(way, load))
                .filter(load -> isWorkedOn(load) || work.before.containsKey(load))
                .sorted(lastFirst)
                .forEach(load -> steps.add(
                        WorkStep.load(isWorkedOn(load) ? WorkStepKind.LOCK_OUT : WorkStepKind.SWITCH_OFF, load)));
        way.isolation()
                .bottomUp(passage.index)
                .forEach(panel -> steps.add(WorkStep.panel(WorkStepKind.ISOLATE_PANEL, panel)));
        way.isolation().boards().forEach(board -> steps.add(WorkStep.board(WorkStepKind.ISOLATE_BOARD, board)));
    }

    void on() {
        work.changes().stream()
                .filter(change -> change.isReTerminated() && isTurning(change.load()))
                .forEach(change -> steps.add(WorkStep.load(WorkStepKind.CHECK_ROTATION, change.load())));
        if (!work.locked.isEmpty()) {
            steps.add(WorkStep.system(WorkStepKind.MAKE_READY));
        }
        way.isolation()
                .topDown(passage.index)
                .forEach(panel -> steps.add(WorkStep.panel(WorkStepKind.ENERGISE_PANEL, panel)));
        way.isolation().boards().forEach(board -> steps.add(WorkStep.board(WorkStepKind.ENERGISE_BOARD, board)));
        way.off().stream()
                .filter(work.after::containsKey)
                .filter(load -> isWorkedOn(load) || !passage.isByCommand(way, load))
                .sorted(Comparator.comparingDouble((String load) -> Passage.on(work.after.get(load)))
                        .thenComparing(this::isBehindAnother))
                .forEach(load -> steps.add(WorkStep.load(backOn(load), load)));
        command(WorkStepKind.SYSTEM_ON, way.systemsOff());
    }

    void test() {
        work.locked.stream()
                .filter(work.after::containsKey)
                .forEach(load -> steps.add(WorkStep.load(WorkStepKind.FUNCTION_TEST, load)));
        if (!work.locked.isEmpty()) {
            steps.add(WorkStep.system(WorkStepKind.RELABEL));
        }
    }

    private boolean isWorkedOn(String load) {
        return work.locked.contains(load);
    }

    private void command(WorkStepKind kind, List<String> systems) {
        if (way.isSystemOff() && systems.isEmpty()) {
            steps.add(WorkStep.system(kind));
        }
        systems.forEach(system -> steps.add(WorkStep.system(kind, system)));
    }

    /** A contactor lets nothing through while the load that it is for is off. */
    private boolean isBehindAnother(String load) {
        return passage.index.load(load).flatMap(Load::comesWith).isPresent();
    }

    private WorkStepKind backOn(String load) {
        if (!isWorkedOn(load)) {
            return WorkStepKind.SWITCH_ON;
        }
        return passage.isByCommand(way, load) ? WorkStepKind.UNLOCK : WorkStepKind.ENERGISE;
    }

    private boolean isTurning(String load) {
        return passage.index.load(load).filter(Rotation::matters).isPresent();
    }
}
