package evenrise.solver.engine.state;

import evenrise.model.project.Behaviour;
import evenrise.model.project.DeadBoard;
import evenrise.model.project.DeadContacts;
import evenrise.model.project.PlanEvent;
import evenrise.model.project.Project;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Energising;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Set;

/**
 * What inrush limits must hold for besides the sequence, and what of it does not depend on the plan. docs/events.md has the
 * arguments.
 */
final class EventLoad {
    final Set<PlanEvent> asked = EnumSet.noneOf(PlanEvent.class);
    /** Whether the breakers of a dead board stay closed through a brownout. */
    final boolean deadStayClosed;
    /** Whether what needs a dead board's loads waits for it; only where a failure is asked for. */
    final boolean othersWait;
    /** Whether it matters from which source a board itself is fed: they do not all fail at once. */
    final boolean sourcesFailApart;

    /** By the part of loads that is seen, as {@link FeederTree#shares}; empty where nothing is asked for. */
    final EventUnits[] units;
    /** Whether it comes back when an emergency is released. */
    final boolean[] comesBack;
    /** By node and phase, what transformers draw by themselves when the mains return or dip. */
    final long[][] energising;
    /** The same when the sequence begins after the mains have returned. */
    final long[][] energisingLater;
    /** What feeds each board itself. */
    final BoardFeeds feeds;
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
        sourcesFailApart = compiled.tree.sources.length > 1
                && (asked.contains(PlanEvent.RETURN) || asked.contains(PlanEvent.BOARD_FAILURE));
        units = new EventUnits[isAsked() ? compiled.tree.shares.length : 0];
        Arrays.setAll(units, share -> new EventUnits(compiled, compiled.tree.shares[share]));
        comesBack = new boolean[compiled.loadCount()];
        for (int load = 0; load < comesBack.length; load++) {
            boolean staysOff = behaviour.motorsStayOff() && compiled.loads[load].isMotor();
            comesBack[load] = compiled.switched[load] && compiled.drops[load] && !staysOff;
        }
        Distribution distribution = Distribution.of(project);
        double wait = Math.max(0, behaviour.steadyWaitSeconds() - project.timingToleranceSeconds());
        energising = energising(compiled, distribution, 0);
        energisingLater = energising(compiled, distribution, wait);
        feeds = new BoardFeeds(compiled, distribution);
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

    private long[][] energising(CompiledProject compiled, Distribution distribution, double afterSeconds) {
        long[][] all = new long[isAsked() ? compiled.tree.nodeCount : 0][];
        Energising energised = Energising.of(distribution);
        Arrays.setAll(
                all,
                node -> Arrays.stream(energised.amps(node, afterSeconds))
                        .mapToLong(amps -> Math.round(amps * compiled.envelopes.unitsPerAmp))
                        .toArray());
        return all;
    }

    private static boolean anyDrops(CompiledProject compiled) {
        for (int load = 0; load < compiled.loadCount(); load++) {
            if (compiled.switched[load] && compiled.drops[load]) {
                return true;
            }
        }
        return false;
    }

    private static int[] members(IntBag bag) {
        int[] members = new int[bag.size()];
        for (int i = 0; i < members.length; i++) {
            members[i] = bag.get(i);
        }
        return members;
    }
}
