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
        return new Behaviour(
                it.brownoutPercent(),
                it.brownoutHoldSeconds(),
                it.steadyPercent(),
                it.steadyWaitSeconds(),
                it.onReturn(),
                it.phaseWatch(),
                it.onRelease(),
                it.releaseWaitSeconds(),
                it.onInEmergency(),
                it.sequenceInEmergency(),
                it.counterCommand(),
                restart,
                it.neededGroup(),
                it.lockRefuses(),
                deadBoard,
                it.deadContacts(),
                it.reinrushPercent(),
                it.reinrushAfterMillis(),
                events);
    }

    /** Anything that a project may state. */
    public static Behaviour any(Random random) {
        return new Behaviour(
                60 + random.nextInt(30),
                random.nextInt(4),
                70 + random.nextInt(30),
                random.nextInt(8),
                any(Resume.values(), random),
                any(PhaseWatch.values(), random),
                any(Resume.values(), random),
                random.nextInt(3),
                any(OnInEmergency.values(), random),
                any(SequenceInEmergency.values(), random),
                any(CounterCommand.values(), random),
                any(Restart.values(), random),
                any(NeededGroup.values(), random),
                any(LockRefuses.values(), random),
                any(DeadBoard.values(), random),
                any(DeadContacts.values(), random),
                50 + random.nextInt(40),
                random.nextInt(100),
                List.of());
    }

    private static <T> T any(T[] values, Random random) {
        return values[random.nextInt(values.length)];
    }
}
