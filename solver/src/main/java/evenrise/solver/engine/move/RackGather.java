package evenrise.solver.engine.move;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import java.util.SplittableRandom;

/**
 * A load moves next to another of its rack: into a row nearby, mostly on the phases that it has, where nothing but the rows
 * changes; or onto the other's board. Whoever is there takes what it leaves.
 */
final class RackGather implements Neighbourhood {
    private static final int TRIES = 6;
    private static final int ROWS = 4;
    /** One draw in so many looks at boards. */
    private static final int BOARDS = 5;

    private final int[] racked;

    RackGather(CompiledProject compiled) {
        racked = java.util.stream.IntStream.range(0, compiled.loadCount())
                .filter(load -> compiled.rackOf[load] != CompiledProject.NONE
                        && compiled.rackMembers[compiled.rackOf[load]].length > 1)
                .toArray();
    }

    @Override
    public boolean draw(PlanSums sums, Targets targets, SplittableRandom random, DraftMove draft) {
        CompiledProject compiled = sums.compiled;
        if (racked.length == 0) {
            return false;
        }
        int load = racked[random.nextInt(racked.length)];
        int[] rack = compiled.rackMembers[compiled.rackOf[load]];
        int mate = rack[random.nextInt(rack.length)];
        if (mate == load || sums.placeOf(load) == null || sums.placeOf(mate) == null) {
            return false;
        }
        return random.nextInt(BOARDS) == 0
                ? joinBoard(sums, load, mate, random, draft)
                : joinRows(sums, load, mate, random, draft);
    }

    private static boolean joinRows(PlanSums sums, int load, int mate, SplittableRandom random, DraftMove draft) {
        CompiledProject compiled = sums.compiled;
        Place from = sums.placeOf(load);
        Place beside = sums.placeOf(mate);
        int panel = beside.panel();
        if (panel != from.panel() && compiled.bundle[compiled.leadOf[load]].length > 1) {
            return false;
        }
        int row = compiled.rowOf(panel, beside.slots()[random.nextInt(beside.slots().length)]);
        boolean keepsPhases = random.nextInt(4) != 0;
        for (int i = 0; i < TRIES; i++) {
            int slot = compiled.slotInRow(panel, row + random.nextInt(2 * ROWS + 1) - ROWS, random.nextBoolean());
            Place to = slot == CompiledProject.NONE ? null : compiled.placeAt[panel][slot][compiled.poles[load]];
            boolean suits = to != null
                    && to != from
                    && (!keepsPhases || to.phaseMask() == from.phaseMask())
                    && compiled.mayTake(load, to);
            if (suits) {
                return PlaceExchange.swap(sums, load, from, to, draft) && draft.keepsRanges();
            }
        }
        return false;
    }

    private static boolean joinBoard(PlanSums sums, int load, int mate, SplittableRandom random, DraftMove draft) {
        CompiledProject compiled = sums.compiled;
        Output from = sums.outputOf(load);
        Output beside = sums.outputOf(mate);
        if (from == null || beside == null || from.board() == beside.board()) {
            return false;
        }
        Output to = compiled.output(beside.board(), random.nextInt(compiled.outputCount(beside.board())));
        int occupant = sums.loadOnOutput(to.index());
        if (occupant == CompiledProject.NONE) {
            draft.wire(load, to);
            return OutputExchange.fits(sums, load, to) && draft.keepsRanges();
        }
        draft.wireAs(load, occupant);
        draft.wireAs(occupant, load);
        return compiled.group[occupant] == compiled.group[load] && draft.keepsRanges();
    }
}
