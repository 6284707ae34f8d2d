package evenrise.model;

import evenrise.model.project.Behaviour;
import evenrise.model.project.CounterCommand;
import evenrise.model.project.DeadBoard;
import evenrise.model.project.DeadContacts;
import evenrise.model.project.LockRefuses;
import evenrise.model.project.NeededGroup;
import evenrise.model.project.OnInEmergency;
import evenrise.model.project.PhaseWatch;
import evenrise.model.project.PlanEvent;
import evenrise.model.project.Restart;
import evenrise.model.project.Resume;
import evenrise.model.project.SequenceInEmergency;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/** Ways for a control to behave. */
public final class TestBehaviour {
    private TestBehaviour() {}

    /** The default, with inrush limits that hold for these events, too. */
    public static Behaviour holdingFor(PlanEvent... events) {
        return like(Restart.WHOLE, DeadBoard.CARRY_ON, List.of(events));
    }

    /** The default, with sequences that begin so. */
    public static Behaviour restarting(Restart restart) {
        return like(restart, DeadBoard.CARRY_ON, List.of());
    }

    /** The default, with boards that stop when one is dead. */
    public static Behaviour stopping() {
        return like(Restart.WHOLE, DeadBoard.STOP, List.of());
    }

    private static Behaviour like(Restart restart, DeadBoard deadBoard, List<PlanEvent> events) {
        Behaviour it = Behaviour.DEFAULT;
        return it.with()
                .restart(restart)
                .deadBoard(deadBoard)
                .inrushLimitHoldsFor(events)
                .build();
    }

    /** Anything that a project may state. */
    public static Behaviour any(Random random) {
        return Behaviour.builder()
                .brownoutPercent(60 + random.nextInt(30))
                .brownoutHoldSeconds(random.nextInt(4))
                .steadyPercent(70 + random.nextInt(30))
                .steadyWaitSeconds(random.nextInt(8))
                .onReturn(any(Resume.values(), random))
                .phaseWatch(any(PhaseWatch.values(), random))
                .onRelease(any(Resume.values(), random))
                .releaseWaitSeconds(random.nextInt(3))
                .onInEmergency(any(OnInEmergency.values(), random))
                .sequenceInEmergency(any(SequenceInEmergency.values(), random))
                .counterCommand(any(CounterCommand.values(), random))
                .restart(any(Restart.values(), random))
                .neededGroup(any(NeededGroup.values(), random))
                .lockRefuses(any(LockRefuses.values(), random))
                .deadBoard(any(DeadBoard.values(), random))
                .deadContacts(any(DeadContacts.values(), random))
                .reinrushPercent(50 + random.nextInt(40))
                .reinrushAfterMillis(random.nextInt(100))
                .motorsResume(random.nextBoolean() ? Optional.empty() : Optional.of(any(Resume.values(), random)))
                .build();
    }

    private static <T> T any(T[] values, Random random) {
        return values[random.nextInt(values.length)];
    }
}
