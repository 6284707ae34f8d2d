package evenrise.solver.exact;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;

import evenrise.model.BoardBuilder;
import evenrise.model.LoadBuilder;
import evenrise.model.PanelBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.SupplyBuilder;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import java.util.Random;

/**
 * Random projects of three loads in one panel, so small that every plan of them can be looked at, with whatever rules one
 * panel can have: groups, order, fixed slots and outputs, phases in common, poles, limits, chains and slow inrush. Some
 * have no plan.
 */
final class TinyRules {
    private static final Role[] ROLES = Role.values();

    private final Random random;

    private TinyRules(long seed) {
        random = new Random(seed * 0x9E3779B97F4A7C15L + 11);
    }

    static Project of(long seed) {
        return new TinyRules(seed).draw();
    }

    private boolean chance(double part) {
        return random.nextDouble() < part;
    }

    private Project draw() {
        PanelBuilder panel = aPanel("P").slots(6);
        SupplyBuilder supply = aSupply().system(chance(0.3) ? PhaseSystem.SPLIT_PHASE : PhaseSystem.THREE_PHASE);
        if (chance(0.3)) {
            panel.switchedSlots(1, 2, 3, 4);
        }
        if (chance(0.3)) {
            panel.sequential();
        }
        if (chance(0.3)) {
            panel.inrushLimitAmps(40 + random.nextInt(60));
        }
        if (chance(0.3)) {
            panel.ratedAmps(12 + random.nextInt(10)).neutralFactor(0.5);
        }
        BoardBuilder second = aBoard("B2").type("T").in("P");
        if (chance(0.5)) {
            second.after("B1");
        }
        ProjectBuilder project = aProject()
                .name("tiny")
                .timingToleranceSeconds(chance(0.5) ? 0.02 : 0)
                .supply(supply)
                .panels(panel)
                .boardTypes(aBoardType("T").outputs(2).startDelaySeconds(0, 0.5).stepSeconds(0.25, 1))
                .boards(aBoard("B1").type("T").in("P"), second)
                .groups(
                        aGroup("G1").drops(),
                        chance(0.5) ? aGroup("G2").holds() : aGroup("G2").drops())
                .objective(ObjectiveWeights.builder()
                        .peakInrush(1)
                        .supplyImbalance(0.5 * random.nextInt(3))
                        .panelImbalance(0.5 * random.nextInt(3))
                        .duration(random.nextInt(12))
                        .boards(random.nextInt(4))
                        .build());
        if (chance(0.2)) {
            project.maxDurationSeconds(1);
        }
        boolean areAlike = chance(0.3);
        for (int i = 1; i <= 3; i++) {
            project.loads(areAlike && i > 1 ? alike(i) : drawn(i));
        }
        return project.build();
    }

    private static LoadBuilder alike(int number) {
        return aLoad("L" + number)
                .amplifier()
                .runningAmps(4)
                .idleAmps(2)
                .inrushPeakAmps(50)
                .inrushHalfMillis(120);
    }

    private LoadBuilder drawn(int number) {
        double running = (10 + random.nextInt(60)) / 10.0;
        LoadBuilder load = aLoad("L" + number)
                .role(ROLES[random.nextInt(ROLES.length)])
                .poles(chance(0.25) ? 2 : 1)
                .runningAmps(running)
                .idleAmps(running / 2)
                .powerFactor(chance(0.5) ? 0.8 : 1)
                .inrushPeakAmps(running + random.nextInt(60))
                .inrushHalfMillis(20 + random.nextInt(400))
                .settleSeconds(chance(0.3) ? 0.5 : 0);
        if (number == 3 && chance(0.2)) {
            return load.unswitched();
        }
        if (chance(0.5)) {
            load.group(chance(0.5) ? "G1" : "G2");
        }
        if (number == 2 && chance(0.3)) {
            load.comesAfter("L1");
        }
        if (number == 2 && chance(0.2)) {
            load.fixedSlot(1 + random.nextInt(4));
        } else if (number == 1 && chance(0.2)) {
            load.fixedOutput(2);
        } else if (number == 1 && chance(0.2)) {
            load.fixedBoard("B2");
        }
        return load;
    }
}
