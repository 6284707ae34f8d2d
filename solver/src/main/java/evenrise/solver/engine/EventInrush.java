package evenrise.solver.engine;

import evenrise.model.project.PlanEvent;

/**
 * What one node peaks at when something happens, kept up to date load by load: only at nodes with an inrush limit, and
 * only where the project asks that it holds for an event.
 *
 * <p>A change costs what it touches; a board failure costs, in addition, the square of the touched chains' loads here and
 * one look at each board.
 */
final class EventInrush {
    private final Plant plant;
    private final EventLoad loads;
    private final Situation situation;
    private final int node;
    private final InrushProfile release;
    private final long[] unswitchedPeak;
    private final long[] unswitchedLater;
    private final long[] allPeak;
    private final long[] allBase;
    private final long[][] boardPeak;
    private final long[][] boardBase;
    private final long[][] boardLater;
    /** By head of a chain: how far the chain's own peak here is above its bases. */
    private final long[][] chainRise;

    private final IntBag staleChains;

    EventInrush(Situation situation, int node, InstantIndex index) {
        this.situation = situation;
        this.plant = situation.plant;
        this.loads = plant.eventLoad;
        this.node = node;
        boolean boards = loads.asked.contains(PlanEvent.BOARD_FAILURE);
        release = loads.asked.contains(PlanEvent.RELEASE) ? new InrushProfile(plant, index) : null;
        unswitchedPeak = new long[plant.phaseCount];
        unswitchedLater = new long[plant.phaseCount];
        allPeak = new long[plant.phaseCount];
        allBase = new long[plant.phaseCount];
        int count = boards ? plant.boardCount : 0;
        boardPeak = new long[count][plant.phaseCount];
        boardBase = new long[count][plant.phaseCount];
        boardLater = new long[count][plant.phaseCount];
        chainRise = new long[count][plant.phaseCount];
        staleChains = new IntBag(count);
    }

    /**
     * Adds or takes away a load that sits here.
     *
     * @param board that switches it, or {@link Plant#NONE}
     * @param instant at which it comes on, or {@link Plant#NONE}
     */
    void add(int load, int phaseMask, int board, int instant, int sign) {
        boolean isSwitched = plant.switched[load];
        if (isSwitched && instant == Plant.NONE) {
            return;
        }
        sum(allPeak, loads.peakUnits[load], phaseMask, sign);
        sum(allBase, plant.envelopes.baseUnits[load], phaseMask, sign);
        if (!isSwitched) {
            sum(unswitchedPeak, loads.peakUnits[load], phaseMask, sign);
            sum(unswitchedLater, loads.laterUnits[load], phaseMask, sign);
        } else if (boardPeak.length > 0) {
            sum(boardPeak[board], loads.peakUnits[load], phaseMask, sign);
            sum(boardBase[board], plant.envelopes.baseUnits[load], phaseMask, sign);
            sum(boardLater[board], loads.laterUnits[load], phaseMask, sign);
            for (int head : loads.heads[board]) {
                staleChains.add(head);
            }
        }
        if (release != null) {
            if (isSwitched && plant.drops[load]) {
                release.add(load, phaseMask, instant, sign);
            } else {
                release.addBase(load, phaseMask, sign);
            }
        }
    }

    private static void sum(long[] sums, int units, int phaseMask, int sign) {
        for (int phase = 0; phase < sums.length; phase++) {
            if ((phaseMask >> phase & 1) != 0) {
                sums[phase] += (long) sign * units;
            }
        }
    }

    /** Charge for peaks over {@code limitAmps}, each event by its worst phase. */
    long charge(InrushProfile normal, double limitAmps) {
        long charge = 0;
        for (PlanEvent event : loads.asked) {
            double excessAmps = worstUnits(event, normal) / plant.envelopes.unitsPerAmp - limitAmps;
            charge += Charges.overMilliAmps(excessAmps * Currents.NANO);
        }
        return charge;
    }

    private long worstUnits(PlanEvent event, InrushProfile normal) {
        long worst = 0;
        for (int phase = 0; phase < plant.phaseCount; phase++) {
            worst = Math.max(
                    worst,
                    switch (event) {
                        case RETURN -> returnUnits(phase, normal);
                        case RELEASE -> release.peakUnits(phase);
                        case BOARD_FAILURE -> boardFailureUnits(phase, normal);
                        case DIP -> allPeak[phase];
                    });
        }
        return worst;
    }

    private long returnUnits(int phase, InrushProfile normal) {
        return Math.max(unswitchedPeak[phase], normal.peakUnits(phase) + unswitchedLater[phase]);
    }

    private long boardFailureUnits(int phase, InrushProfile normal) {
        refreshChains();
        long later = normal.peakUnits(phase) + unswitchedLater[phase];
        long worst = returnUnits(phase, normal);
        for (int board = 0; board < boardPeak.length; board++) {
            if (loads.deadStayClosed) {
                worst = Math.max(worst, unswitchedPeak[phase] + boardPeak[board][phase]);
                worst = Math.max(worst, later + boardBase[board][phase] + boardLater[board][phase]);
            }
            worst = Math.max(worst, allBase[phase] + chainRise[board][phase]);
        }
        return worst;
    }

    private void refreshChains() {
        for (int i = 0; i < staleChains.size(); i++) {
            int head = staleChains.get(i);
            for (int phase = 0; phase < plant.phaseCount; phase++) {
                chainRise[head][phase] = rise(head, phase);
            }
        }
        staleChains.clear();
    }

    /** How far the loads of a chain, coming on alone, peak above their bases. */
    private long rise(int head, int phase) {
        long bases = 0;
        long peak = 0;
        for (int board : loads.chain[head]) {
            for (int k = plant.firstOutput[board]; k < plant.firstOutput[board + 1]; k++) {
                int load = situation.loadOnOutput(k);
                if (isHere(load, phase)) {
                    bases += plant.envelopes.baseUnits[load];
                    peak = Math.max(peak, chainUnits(head, phase, situation.instantOf(load)));
                }
            }
        }
        return peak - bases;
    }

    private long chainUnits(int head, int phase, int at) {
        long units = 0;
        for (int board : loads.chain[head]) {
            for (int k = plant.firstOutput[board]; k < plant.firstOutput[board + 1]; k++) {
                int load = situation.loadOnOutput(k);
                if (isHere(load, phase) && situation.instantOf(load) <= at) {
                    units += plant.envelopes.units(load, situation.instantOf(load), at);
                }
            }
        }
        return units;
    }

    private boolean isHere(int load, int phase) {
        if (load == Plant.NONE || situation.instantOf(load) == Plant.NONE) {
            return false;
        }
        Place place = situation.placeOf(load);
        return place != null && (node == 0 || place.panel() == node - 1) && (place.phaseMask() >> phase & 1) != 0;
    }
}
