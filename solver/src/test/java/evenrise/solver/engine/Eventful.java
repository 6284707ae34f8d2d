package evenrise.solver.engine;

import evenrise.model.project.Behaviour;
import evenrise.model.project.DeadContacts;
import evenrise.model.project.Panel;
import evenrise.model.project.PlanEvent;
import evenrise.model.project.Project;
import evenrise.model.project.Supply;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;

/** Projects whose inrush limits, wider than before, hold for some events, too. */
final class Eventful {
    private Eventful() {}

    /** The same project with a limit at the supply and at most panels. */
    static Project of(Project project, long seed) {
        Random random = new Random(seed);
        double peaks = project.loads().stream()
                .mapToDouble(load -> Math.max(load.inrushPeakAmps(), Math.sqrt(2) * load.idleAmps()))
                .sum();
        List<PlanEvent> asked = new ArrayList<>();
        for (PlanEvent each : PlanEvent.values()) {
            if (random.nextInt(3) > 0) {
                asked.add(each);
            }
        }
        Supply old = project.supply();
        Supply supply = new Supply(
                old.system(),
                old.lineToNeutralVolts(),
                old.frequencyHertz(),
                old.ratedAmps(),
                old.continuousFraction(),
                old.neutralFactor(),
                limit(random, peaks));
        List<Panel> panels = project.panels().stream()
                .map(panel -> new Panel(
                        panel.id(),
                        panel.slots(),
                        panel.ratedAmps(),
                        panel.neutralFactor(),
                        random.nextInt(4) == 0 ? OptionalDouble.empty() : limit(random, peaks),
                        panel.numbering(),
                        panel.phaseRotation(),
                        panel.reservedSlots(),
                        panel.switchedSlots()))
                .toList();
        return new Project(
                        project.format(),
                        project.name(),
                        supply,
                        project.timingToleranceSeconds(),
                        project.maxDurationSeconds(),
                        panels,
                        project.boardTypes(),
                        project.boards(),
                        project.shutdownGroups(),
                        project.loads(),
                        project.objective())
                .behaving(behaviour(random, asked));
    }

    private static OptionalDouble limit(Random random, double peaks) {
        return OptionalDouble.of(peaks * (0.05 + 0.8 * random.nextDouble()));
    }

    private static Behaviour behaviour(Random random, List<PlanEvent> asked) {
        Behaviour it = Behaviour.DEFAULT;
        return new Behaviour(
                it.brownoutPercent(),
                it.brownoutHoldSeconds(),
                it.steadyPercent(),
                random.nextBoolean() ? 5 : random.nextDouble(),
                it.onReturn(),
                it.phaseWatch(),
                it.onRelease(),
                it.releaseWaitSeconds(),
                it.onInEmergency(),
                it.sequenceInEmergency(),
                it.counterCommand(),
                it.restart(),
                it.neededGroup(),
                it.lockRefuses(),
                it.deadBoard(),
                random.nextInt(3) > 0 ? DeadContacts.STAY : DeadContacts.OPEN,
                it.reinrushPercent(),
                it.reinrushAfterMillis(),
                asked);
    }
}
