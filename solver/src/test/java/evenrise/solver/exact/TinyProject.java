package evenrise.solver.exact;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;

import evenrise.model.ProjectBuilder;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import java.util.Random;

/** Random projects of three switched loads and one other, so small that every plan of them can be looked at. */
final class TinyProject {
    private TinyProject() {}

    static Project of(long seed) {
        return of(seed, 2.5);
    }

    /** @param firstRunningAmps of the first load */
    static Project of(long seed, double firstRunningAmps) {
        Random random = new Random(seed * 0x9E3779B97F4A7C15L + 3);
        ProjectBuilder project = aProject()
                .name("tiny-" + seed)
                .timingToleranceSeconds(random.nextBoolean() ? 0.05 : 0)
                .supply(aSupply().system(random.nextBoolean() ? PhaseSystem.SPLIT_PHASE : PhaseSystem.THREE_PHASE))
                .panels(aPanel("P1").slots(5).reservedSlots(1 + random.nextInt(5)))
                .boardTypes(aBoardType("T").outputs(3).startDelaySeconds(0, 0.5).stepSeconds(0.25, 0.5))
                .boards(
                        aBoard("B1").type("T").in("P1"),
                        aBoard("B2").type("T").in("P1").after("B1"))
                .objective(ObjectiveWeights.builder()
                        .peakInrush(1)
                        .supplyImbalance(1)
                        .panelImbalance(0.5)
                        .duration(0.1 * random.nextInt(9))
                        .boards(random.nextInt(3))
                        .build());
        for (int i = 1; i <= 3; i++) {
            double running = i == 1 ? firstRunningAmps : (10 + random.nextInt(100)) / 10.0;
            project.loads(aLoad("L" + i)
                    .role(i == 1 ? Role.PROCESSING : Role.AMPLIFIER)
                    .settleSeconds(i == 1 ? random.nextInt(3) * 0.25 : 0)
                    .runningAmps(running)
                    .idleAmps(running / 2)
                    .inrushPeakAmps(running + random.nextInt(60))
                    .inrushHalfMillis(20 + random.nextInt(400)));
        }
        project.loads(aLoad("L4").unswitched().runningAmps((10 + random.nextInt(50)) / 10.0));
        return project.build();
    }
}
