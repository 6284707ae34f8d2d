package evenrise.solver.rework;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/** Writes out the single steps of one stage: off, what is gone out, breakers, leads, settings, on, tests. */
final class StageSteps {
    private StageSteps() {}

    static List<WorkStep> of(Passage passage, BitSet done, BitSet stage, Passage.Way way) {
        StageWork work = new StageWork(passage, done, stage, way);
        List<WorkStep> steps = new ArrayList<>();
        SwitchingSteps switching = new SwitchingSteps(work, steps);
        BreakerSteps breakers = new BreakerSteps(work, steps);
        LeadSteps leads = new LeadSteps(work, steps);
        switching.off();
        for (Removal removal : work.removals()) {
            leads.remove(removal);
            breakers.remove(removal);
        }
        breakers.move();
        leads.move();
        stage.stream()
                .mapToObj(passage::timeWith)
                .flatMap(Optional::stream)
                .forEach(change -> steps.add(WorkStep.time(change)));
        stage.stream()
                .filter(passage::isSetting)
                .forEach(change -> steps.add(WorkStep.setting(passage.setting(change))));
        switching.on();
        switching.test();
        return steps;
    }
}
