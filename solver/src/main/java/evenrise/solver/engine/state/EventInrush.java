package evenrise.solver.engine.state;

import evenrise.model.project.PlanEvent;

/**
 * What one node peaks at when something happens, kept up to date load by load: only at nodes with an inrush limit, and
 * only where the project asks that it holds for an event.
 *
 * <p>A change costs what it touches; a board failure costs, in addition, the square of the touched chains' loads here and
 * one look at each board.
 */
final class EventInrush {
    private final CompiledProject compiled;
    private final EventLoad loads;
    private final PlanSums sums;
    private final int node;
    private final InrushProfile release;
    /** Of all loads without what stays; only where loads wait for a dead board. */
    private final InrushProfile excess;

    /** Of what holds in an emergency; what drops is in {@link #release}. */
    private final long[] heldUse;

    private final long[] unswitchedAnew;
    /** How much more unswitched loads draw while the sequence runs than it counts of them. */
    private final long[] unswitchedLater;

    private final long[] allAnew;
    private final long[] allUse;
    private final long[][] boardAnew;
    private final long[][] boardLater;
    /** By head of a chain: how far the chain's own peak here is above what it draws in use; may be less. */
    private final long[][] chainRise;

    private final IntBag staleChains;

    EventInrush(PlanSums sums, int node, InstantIndex index) {
        this.sums = sums;
        this.compiled = sums.compiled;
        this.loads = compiled.eventLoad;
        this.node = node;
        boolean boards = loads.asked.contains(PlanEvent.BOARD_FAILURE);
        release = loads.asked.contains(PlanEvent.RELEASE) ? new InrushProfile(compiled, index) : null;
        excess = loads.othersWait ? new InrushProfile(compiled, index) : null;
        heldUse = new long[compiled.phaseCount];
        unswitchedAnew = new long[compiled.phaseCount];
        unswitchedLater = new long[compiled.phaseCount];
        allAnew = new long[compiled.phaseCount];
        allUse = new long[compiled.phaseCount];
        int count = boards ? compiled.boardCount : 0;
        boardAnew = new long[count][compiled.phaseCount];
        boardLater = new long[count][compiled.phaseCount];
        chainRise = new long[count][compiled.phaseCount];
        staleChains = new IntBag(count);
    }

    /**
     * Adds or takes away a load that sits here.
     *
     * @param board that switches it, or {@link CompiledProject#NONE}
     * @param instant at which it comes on, or {@link CompiledProject#NONE}
     */
    void add(int load, int phaseMask, int board, int instant, int sign) {
        boolean isSwitched = compiled.switched[load];
        if (isSwitched && instant == CompiledProject.NONE) {
            return;
        }
        sum(allAnew, loads.anewUnits[load], phaseMask, sign);
        sum(allUse, loads.useUnits[load], phaseMask, sign);
        if (!isSwitched) {
            long risesTo = loads.useUnits[load] - compiled.envelopes.baseUnits[load];
            sum(unswitchedAnew, loads.returnUnits[load], phaseMask, sign);
            sum(unswitchedLater, risesTo + loads.laterUnits[load], phaseMask, sign);
        } else if (boardAnew.length > 0) {
            sum(boardAnew[board], loads.returnUnits[load], phaseMask, sign);
            sum(boardLater[board], loads.useUnits[load] + loads.laterUnits[load], phaseMask, sign);
            for (int head : loads.heads[board]) {
                staleChains.add(head);
            }
        }
        if (isSwitched && excess != null) {
            excess.addExcess(load, phaseMask, instant, sign);
        }
        if (release != null) {
            if (loads.comesBack[load]) {
                release.add(load, phaseMask, instant, sign);
            } else if (!isSwitched || !compiled.drops[load]) {
                sum(heldUse, loads.useUnits[load], phaseMask, sign);
            }
        }
    }

    private static void sum(long[] sums, long units, int phaseMask, int sign) {
        for (int phase = 0; phase < sums.length; phase++) {
            if ((phaseMask >> phase & 1) != 0) {
                sums[phase] += sign * units;
            }
        }
    }

    /** Charge for peaks over {@code limitAmps}, each event by its worst phase. */
    long charge(NodeInrush normal, double limitAmps) {
        long charge = 0;
        for (PlanEvent event : loads.asked) {
            double excessAmps = worstUnits(event, normal) / compiled.envelopes.unitsPerAmp - limitAmps;
            charge += Charges.overMilliAmps(excessAmps * Currents.NANO);
        }
        return charge;
    }

    private long worstUnits(PlanEvent event, NodeInrush normal) {
        long worst = 0;
        for (int phase = 0; phase < compiled.phaseCount; phase++) {
            worst = Math.max(
                    worst,
                    switch (event) {
                        case RETURN -> returnUnits(phase, normal);
                        case RELEASE -> heldUse[phase] + release.peakUnits(phase);
                        case BOARD_FAILURE -> boardFailureUnits(phase, normal);
                        case DIP -> allAnew[phase];
                    });
        }
        return worst;
    }

    private long returnUnits(int phase, NodeInrush normal) {
        return Math.max(unswitchedAnew[phase], normal.peakUnits(phase) + unswitchedLater[phase]);
    }

    private long boardFailureUnits(int phase, NodeInrush normal) {
        refreshChains();
        long later = normal.peakUnits(phase) + unswitchedLater[phase];
        long worst =
                Math.max(returnUnits(phase, normal), allUse[phase] + (excess == null ? 0 : excess.peakUnits(phase)));
        for (int board = 0; board < boardAnew.length; board++) {
            if (loads.deadStayClosed) {
                worst = Math.max(worst, unswitchedAnew[phase] + boardAnew[board][phase]);
                worst = Math.max(worst, later + boardLater[board][phase]);
            }
            worst = Math.max(worst, allUse[phase] + chainRise[board][phase]);
        }
        return worst;
    }

    private void refreshChains() {
        for (int i = 0; i < staleChains.size(); i++) {
            int head = staleChains.get(i);
            for (int phase = 0; phase < compiled.phaseCount; phase++) {
                chainRise[head][phase] = rise(head, phase);
            }
        }
        staleChains.clear();
    }

    /** How far the loads of a chain, coming on alone, peak above what they draw in use. */
    private long rise(int head, int phase) {
        long inUse = 0;
        long peak = 0;
        for (int board : loads.chain[head]) {
            for (int k = compiled.firstOutput[board]; k < compiled.firstOutput[board + 1]; k++) {
                int load = sums.loadOnOutput(k);
                if (isHere(load, phase)) {
                    inUse += loads.useUnits[load];
                    peak = Math.max(peak, chainUnits(head, phase, sums.instantOf(load)));
                }
            }
        }
        return peak - inUse;
    }

    private long chainUnits(int head, int phase, int at) {
        long units = 0;
        for (int board : loads.chain[head]) {
            for (int k = compiled.firstOutput[board]; k < compiled.firstOutput[board + 1]; k++) {
                int load = sums.loadOnOutput(k);
                if (isHere(load, phase) && sums.instantOf(load) <= at) {
                    units += compiled.envelopes.units(load, sums.instantOf(load), at);
                }
            }
        }
        return units;
    }

    private boolean isHere(int load, int phase) {
        if (load == CompiledProject.NONE || sums.instantOf(load) == CompiledProject.NONE) {
            return false;
        }
        Place place = sums.placeOf(load);
        return place != null && (node == 0 || place.panel() == node - 1) && (place.phaseMask() >> phase & 1) != 0;
    }
}
