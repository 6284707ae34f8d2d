package evenrise.solver.engine.nearby;

import evenrise.solver.engine.move.DraftMove;
import evenrise.solver.engine.move.Neighbourhood;
import evenrise.solver.engine.move.PlaceExchange;
import evenrise.solver.engine.move.Targets;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.IntBag;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import java.util.ArrayDeque;
import java.util.SplittableRandom;

/**
 * A load that was moved goes back to where it was built, and so does whoever is in its way; or that one takes what the
 * load leaves. Or a board gets back the setting it had, an output its time.
 */
final class ReturnToBuilt implements Neighbourhood {
    private static final int LONGEST_CHAIN = 64;

    private final BuiltPositions positions;

    ReturnToBuilt(BuiltPositions positions) {
        this.positions = positions;
    }

    @Override
    public boolean draw(PlanSums sums, Targets targets, SplittableRandom random, DraftMove draft) {
        int loads = positions.awayLoads().size();
        int boards = positions.awayBoards().size();
        int times = positions.awayTimes().size();
        if (loads + boards + times == 0) {
            return false;
        }
        int chosen = random.nextInt(loads + boards + times);
        if (chosen >= loads + boards) {
            int load = positions.awayTimes().get(random.nextInt(times));
            draft.time(load, positions.time(load));
            return true;
        }
        if (chosen < boards) {
            int board = positions.awayBoards().get(random.nextInt(boards));
            draft.set(board, positions.startDelay(board), positions.step(board));
            return true;
        }
        int load = positions.awayLoads().get(random.nextInt(loads));
        int what = random.nextInt(4);
        boolean drawn =
                switch (what) {
                    case 0 -> bring(sums, load, true, false, draft);
                    case 1 -> bring(sums, load, false, true, draft);
                    case 2 -> bring(sums, load, true, true, draft);
                    default -> exchange(sums, load, draft);
                };
        return drawn && !draft.isEmpty() && draft.keepsRanges();
    }

    /** The load returns, and whoever holds its position returns to its own. */
    boolean bring(PlanSums sums, int first, boolean places, boolean outputs, DraftMove draft) {
        ArrayDeque<Integer> chain = new ArrayDeque<>();
        IntBag met = new IntBag(sums.compiled.loadCount());
        chain.add(first);
        met.add(first);
        while (!chain.isEmpty()) {
            int load = chain.poll();
            if (places && positions.place(load) != sums.placeOf(load)) {
                if (positions.place(load) == null) {
                    return false;
                }
                draft.place(load, positions.place(load));
                for (int slot : positions.place(load).slots()) {
                    follow(sums.loadInSlot(slot), met, chain);
                }
            }
            if (outputs && positions.output(load) != sums.outputOf(load)) {
                if (positions.output(load) == null) {
                    return false;
                }
                land(sums, load, draft);
                follow(sums.loadOnOutput(positions.output(load).index()), met, chain);
            }
            if (met.size() > LONGEST_CHAIN) {
                return false;
            }
        }
        return true;
    }

    private static void follow(int occupant, IntBag met, ArrayDeque<Integer> chain) {
        if (occupant != CompiledProject.NONE && !met.contains(occupant)) {
            met.add(occupant);
            chain.add(occupant);
        }
    }

    /** The load returns, and whoever is there takes what it leaves. */
    private boolean exchange(PlanSums sums, int load, DraftMove draft) {
        Place place = positions.place(load);
        if (place != null && place != sums.placeOf(load) && sums.placeOf(load) != null) {
            return PlaceExchange.swap(sums, load, sums.placeOf(load), place, draft);
        }
        Output output = positions.output(load);
        if (output == null || output == sums.outputOf(load) || sums.outputOf(load) == null) {
            return false;
        }
        int occupant = sums.loadOnOutput(output.index());
        if (occupant != CompiledProject.NONE) {
            draft.wire(occupant, sums.outputOf(load));
        }
        land(sums, load, draft);
        return true;
    }

    /** On its output as built, at the time that had. */
    private void land(PlanSums sums, int load, DraftMove draft) {
        Output output = positions.output(load);
        draft.wire(load, output);
        if (sums.compiled.times[output.board()] != null) {
            draft.time(load, positions.time(load));
        }
    }
}
