package evenrise.solver.engine.state;

import evenrise.model.electrical.FullUse;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.project.Behaviour;
import evenrise.model.project.DeadBoard;
import evenrise.model.project.DeadContacts;
import evenrise.model.project.PlanEvent;
import evenrise.model.project.Project;
import java.util.EnumSet;
import java.util.Set;

/**
 * What inrush limits must hold for besides the sequence, and what each load draws then that does not depend on when it
 * comes on: in units, rounded once a load. docs/events.md has the arguments.
 */
final class EventLoad {
    final Set<PlanEvent> asked = EnumSet.noneOf(PlanEvent.class);
    /** Whether the breakers of a dead board stay closed through a brownout. */
    final boolean deadStayClosed;
    /** Whether what needs a dead board's loads waits for it; only where a failure is asked for. */
    final boolean othersWait;

    /** In full use. */
    final long[] useUnits;
    /** When a deep dip passes: the inrush beside what it is used for. */
    final long[] anewUnits;
    /** When the mains return; as in a dip, but for motors that stay off. */
    final long[] returnUnits;
    /** Whether it comes back when an emergency is released. */
    final boolean[] comesBack;
    /** What is left of the excess when the sequence begins after the mains have returned. */
    final long[] laterUnits;
    /** Boards that each board starts, directly or by others, itself included; only where a failure is asked for. */
    final int[][] chain;
    /** Boards that start each board, directly or by others, itself included; only where a failure is asked for. */
    final int[][] heads;

    EventLoad(CompiledProject compiled) {
        Project project = compiled.project;
        Behaviour behaviour = project.behaviourOrDefault();
        asked.addAll(behaviour.inrushLimitHoldsFor());
        if (compiled.boardCount == 0) {
            asked.remove(PlanEvent.BOARD_FAILURE);
        }
        if (!anyDrops(compiled)) {
            asked.remove(PlanEvent.RELEASE);
        }
        othersWait = asked.contains(PlanEvent.BOARD_FAILURE) && behaviour.deadBoard() == DeadBoard.STOP;
        deadStayClosed = behaviour.deadContacts() == DeadContacts.STAY;
        int count = compiled.loadCount();
        useUnits = new long[count];
        anewUnits = new long[count];
        returnUnits = new long[count];
        comesBack = new boolean[count];
        laterUnits = new long[count];
        double wait = Math.max(0, behaviour.steadyWaitSeconds() - project.timingToleranceSeconds());
        for (int load = 0; load < count; load++) {
            InrushEnvelope envelope = InrushEnvelope.of(project.loads().get(load), project.timingToleranceSeconds());
            double useAmps = FullUse.amps(project.loads().get(load));
            useUnits[load] = units(compiled, useAmps);
            anewUnits[load] = units(compiled, useAmps + envelope.excessAmps());
            boolean staysOff =
                    behaviour.motorsStayOff() && project.loads().get(load).isMotor();
            returnUnits[load] = staysOff ? useUnits[load] : anewUnits[load];
            comesBack[load] = compiled.switched[load] && compiled.drops[load] && !staysOff;
            laterUnits[load] = staysOff ? 0 : units(compiled, envelope.excessLeftAmps(wait));
        }
        int boards = asked.contains(PlanEvent.BOARD_FAILURE) ? compiled.boardCount : 0;
        chain = new int[boards][];
        heads = new int[boards][];
        for (int board = 0; board < boards; board++) {
            IntBag above = new IntBag(compiled.boardCount);
            for (int b = board; b != CompiledProject.NONE; b = compiled.after[b]) {
                above.add(b);
            }
            heads[board] = members(above);
            IntBag below = new IntBag(compiled.boardCount);
            below.add(board);
            for (int i = 0; i < below.size(); i++) {
                for (int follower : compiled.followers[below.get(i)]) {
                    below.add(follower);
                }
            }
            chain[board] = members(below);
        }
    }

    /** Whether limits must hold for anything besides the sequence. */
    boolean isAsked() {
        return !asked.isEmpty();
    }

    private static boolean anyDrops(CompiledProject compiled) {
        for (int load = 0; load < compiled.loadCount(); load++) {
            if (compiled.switched[load] && compiled.drops[load]) {
                return true;
            }
        }
        return false;
    }

    private static long units(CompiledProject compiled, double amps) {
        return Math.round(amps * compiled.envelopes.unitsPerAmp);
    }

    private static int[] members(IntBag bag) {
        int[] members = new int[bag.size()];
        for (int i = 0; i < members.length; i++) {
            members[i] = bag.get(i);
        }
        return members;
    }
}
