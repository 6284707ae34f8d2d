package evenrise.solver.engine.search;

import evenrise.model.project.Behaviour;
import evenrise.model.project.DeadBoard;
import evenrise.model.project.DeadContacts;
import evenrise.model.project.Equipment;
import evenrise.model.project.Motor;
import evenrise.model.project.Panel;
import evenrise.model.project.PlanEvent;
import evenrise.model.project.Project;
import evenrise.model.project.Resume;
import evenrise.model.project.Supply;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;

/** Projects whose inrush limits, wider than before, hold for some events, too. */
final class Eventful {
    private Eventful() {}

    /** The same project with a limit at the supply and at most panels. */
    static Project of(Project project, long seed) {
        Random random = new Random(seed);
        double peaks = project.loads().stream()
                .mapToDouble(load -> Math.max(load.inrushAmps(), Math.sqrt(2) * load.idleAmps()))
                .sum();
        List<PlanEvent> asked = new ArrayList<>();
        for (PlanEvent each : PlanEvent.values()) {
            if (random.nextInt(3) > 0) {
                asked.add(each);
            }
        }
        Supply old = project.supply();
        Supply supply = old.withInrushLimitAmps(limit(random, peaks));
        List<Panel> panels = project.panels().stream()
                .map(panel -> panel.withInrushLimitAmps(
                        random.nextInt(4) == 0 ? OptionalDouble.empty() : limit(random, peaks)))
                .toList();
        Equipment motor = Equipment.builder().motor(Motor.builder().build()).build();
        return project.with()
                .loads(project.loads().stream()
                        .map(load -> random.nextInt(4) == 0
                                ? load.with().equipment(motor).build()
                                : load)
                        .toList())
                .supply(supply)
                .panels(panels)
                .behaviour(behaviour(random, asked))
                .build();
    }

    private static OptionalDouble limit(Random random, double peaks) {
        return OptionalDouble.of(peaks * (0.05 + 0.8 * random.nextDouble()));
    }

    private static Behaviour behaviour(Random random, List<PlanEvent> asked) {
        Behaviour it = Behaviour.DEFAULT;
        return it.with()
                .steadyWaitSeconds(random.nextBoolean() ? 5 : random.nextDouble())
                .deadBoard(random.nextInt(3) > 0 ? DeadBoard.CARRY_ON : DeadBoard.STOP)
                .deadContacts(random.nextInt(3) > 0 ? DeadContacts.STAY : DeadContacts.OPEN)
                .inrushLimitHoldsFor(asked)
                .motorsResume(random.nextBoolean() ? Optional.empty() : Optional.of(Resume.STAY_OFF))
                .build();
    }
}
