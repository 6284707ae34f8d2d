package evenrise.solver.engine.fine;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import evenrise.solver.engine.state.Setting;
import java.util.Arrays;
import java.util.BitSet;

/** A plan as small changes see it: who sits where, what switches it and when, on arrays, with the sums that are judged. */
final class FinePlan {
    private static final int NONE = CompiledProject.NONE;

    final CompiledProject compiled;
    final FineProfile profile;
    final FineOrder order;
    final FineCurrents currents;
    /** Where each load sits; null before a plan was taken. */
    final Place[] placeOf;

    final Output[] outputOf;
    final int[] instantOf;
    final int[] loadInSlot;
    final int[] loadOnOutput;
    /** By board, positions of its settings among those offered. */
    final int[] delay;

    final int[] step;
    /** How much what draws little comes on before what draws much, as {@link PlanSums#leaning()}. */
    double leaning;
    /** As {@link PlanSums#offWishes()}. */
    double offWishes;

    /** Boards that may be set anew and whose loads may change outputs, the loads on them, and those that may change slots. */
    int[] boards = {};

    int[] timed = {};
    int[] placed = {};
    int boardsUsed;

    private final boolean[] isTied;

    FinePlan(CompiledProject compiled) {
        this.compiled = compiled;
        profile = new FineProfile(compiled);
        order = new FineOrder(compiled, profile.size());
        currents = new FineCurrents(compiled);
        int loads = compiled.loadCount();
        placeOf = new Place[loads];
        outputOf = new Output[loads];
        instantOf = new int[loads];
        loadInSlot = new int[compiled.slotCount()];
        Arrays.fill(loadInSlot, NONE);
        loadOnOutput = new int[compiled.outputs.size()];
        Arrays.fill(loadOnOutput, NONE);
        delay = new int[compiled.boardCount];
        step = new int[compiled.boardCount];
        isTied = new boolean[loads];
        for (int load = 0; load < loads; load++) {
            isTied[load] = compiled.pairs.ofLoad[load].length > 0 || compiled.fixedOnMicros[load] != NONE;
        }
    }

    /** Becomes a plan that keeps every rule; what it has of it already costs nothing. */
    void take(PlanSums sums) {
        for (int load = 0; load < placeOf.length; load++) {
            boolean stays = placeOf[load] == sums.placeOf(load) && instantOf[load] == sums.instantOf(load);
            if (!stays && placeOf[load] != null) {
                add(load, -1);
            }
        }
        for (int load = 0; load < placeOf.length; load++) {
            boolean stays = placeOf[load] == sums.placeOf(load) && instantOf[load] == sums.instantOf(load);
            if (stays && outputOf[load] == sums.outputOf(load)) {
                continue;
            }
            if (placeOf[load] != null) {
                vacate(load);
            }
            placeOf[load] = sums.placeOf(load);
            outputOf[load] = sums.outputOf(load);
            instantOf[load] = sums.instantOf(load);
            if (!stays) {
                add(load, 1);
            }
        }
        leaning = 0;
        offWishes = sums.offWishes();
        for (int load = 0; load < placeOf.length; load++) {
            occupy(load);
            leaning += instantOf[load] < 0 ? 0 : leanOf(load) * instantOf[load];
        }
        currents.sum();
        findBoards(sums);
        placed = java.util.stream.IntStream.range(0, placeOf.length)
                .filter(load ->
                        !isTied[load] && compiled.fixedSlot[load] == NONE && compiled.poles[load] < compiled.phaseCount)
                .toArray();
    }

    private void add(int load, int sign) {
        profile.add(load, placeOf[load].phaseMask(), instantOf[load], sign);
        currents.add(load, placeOf[load].panel(), placeOf[load].phaseMask(), sign);
        if (instantOf[load] >= 0) {
            order.add(load, instantOf[load], sign);
        }
    }

    double leanOf(int load) {
        return compiled.lean[load] / 1000.0 / Math.max(1, profile.size() - 1);
    }

    /** Boards outside chains, of one step, whose loads are neither fixed in time nor tied to others. */
    private void findBoards(PlanSums sums) {
        BitSet free = new BitSet();
        boardsUsed = 0;
        for (int board = 0; board < delay.length; board++) {
            delay[board] = sums.clock().startDelay(board).index();
            step[board] = sums.clock().step(board).index();
            boolean isFree = compiled.times[board] == null
                    && compiled.after[board] == NONE
                    && compiled.followers[board].length == 0;
            boolean isUsed = false;
            for (int k = compiled.firstOutput[board]; k < compiled.firstOutput[board + 1]; k++) {
                if (loadOnOutput[k] != NONE) {
                    isUsed = true;
                    isFree &= !isTied[loadOnOutput[k]];
                }
            }
            free.set(board, isFree && isUsed);
            boardsUsed += isUsed ? 1 : 0;
        }
        boards = free.stream().toArray();
        timed = java.util.stream.IntStream.range(0, outputOf.length)
                .filter(load -> outputOf[load] != null && free.get(outputOf[load].board()))
                .toArray();
    }

    /** From now on tries only what is on these boards and in these panels. */
    void only(BitSet onBoards, BitSet inPanels) {
        boards = Arrays.stream(boards).filter(onBoards::get).toArray();
        timed = Arrays.stream(timed)
                .filter(load -> onBoards.get(outputOf[load].board()))
                .toArray();
        placed = Arrays.stream(placed)
                .filter(load -> inPanels.get(placeOf[load].panel()))
                .toArray();
    }

    /** The instant of an output of a board under a setting. */
    int instant(int board, int ordinal, int delayIndex, int stepIndex) {
        return compiled.instants.indexOf(
                compiled.startDelays[board][delayIndex].micros() + ordinal * compiled.steps[board][stepIndex].micros());
    }

    Setting startDelay(int board) {
        return compiled.startDelays[board][delay[board]];
    }

    Setting step(int board) {
        return compiled.steps[board][step[board]];
    }

    /** Whether a load stays where it is: it is tied to others, or fixed in time. */
    boolean isTied(int load) {
        return isTied[load];
    }

    /** Makes a change whose currents and profile are worked in already. */
    void make(FineChange change) {
        for (int i = 0; i < change.count; i++) {
            int load = change.loads[i];
            vacate(load);
            placeOf[load] = change.places[i];
            outputOf[load] = change.outputs[i];
            instantOf[load] = change.instants[i];
        }
        for (int i = 0; i < change.count; i++) {
            occupy(change.loads[i]);
        }
        for (int i = 0; i < change.boardCount; i++) {
            delay[change.boards[i]] = change.delays[i];
            step[change.boards[i]] = change.steps[i];
        }
    }

    private void vacate(int load) {
        for (int slot : placeOf[load].slots()) {
            if (loadInSlot[slot] == load) {
                loadInSlot[slot] = NONE;
            }
        }
        if (outputOf[load] != null && loadOnOutput[outputOf[load].index()] == load) {
            loadOnOutput[outputOf[load].index()] = NONE;
        }
    }

    private void occupy(int load) {
        for (int slot : placeOf[load].slots()) {
            loadInSlot[slot] = load;
        }
        if (outputOf[load] != null) {
            loadOnOutput[outputOf[load].index()] = load;
        }
    }
}
