package evenrise.solver.engine.search;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import evenrise.solver.engine.state.Setting;
import java.util.Random;

/** Draws moves as anybody would think of them first: inside a panel, and where asked for across panels. */
public final class PlainMoves {
    private final CompiledProject compiled;
    private final boolean leavesPanels;

    /** @param leavesPanels whether loads of two panels change places and outputs, too */
    public PlainMoves(CompiledProject compiled, boolean leavesPanels) {
        this.compiled = compiled;
        this.leavesPanels = leavesPanels;
    }

    /** What may be done to a plan as it is; nothing where what was drawn cannot be. */
    public PlainMove draw(PlanSums now, Random random) {
        return switch (random.nextInt(leavesPanels ? 4 : 3)) {
            case 0 -> place(now, random);
            case 1 -> output(now, random);
            case 2 -> setting(now, random);
            default -> exchange(now, random);
        };
    }

    private PlainMove place(PlanSums now, Random random) {
        int load = random.nextInt(compiled.loadCount());
        Place from = now.placeOf(load);
        if (from == null) {
            return PlainMove.NOTHING;
        }
        Place[][] slots = compiled.placeAt[from.panel()];
        Place to = slots[random.nextInt(slots.length)][compiled.poles[load]];
        if (to == null || !compiled.mayTake(load, to)) {
            return PlainMove.NOTHING;
        }
        int other = CompiledProject.NONE;
        for (int slot : to.slots()) {
            int sits = now.loadInSlot(slot);
            if (sits != CompiledProject.NONE && now.placeOf(sits) != to) {
                return PlainMove.NOTHING;
            }
            other = sits == CompiledProject.NONE ? other : sits;
        }
        if (other == load || other != CompiledProject.NONE && !compiled.mayTake(other, from)) {
            return PlainMove.NOTHING;
        }
        int swapped = other;
        return new PlainMove(sums -> seat(sums, load, to, swapped, from), sums -> seat(sums, load, from, swapped, to));
    }

    private static void seat(PlanSums sums, int load, Place place, int other, Place otherPlace) {
        sums.place(load, place);
        if (other != CompiledProject.NONE) {
            sums.place(other, otherPlace);
        }
    }

    /** Among the outputs of boards in one panel. */
    private PlainMove output(PlanSums now, Random random) {
        int load = random.nextInt(compiled.loadCount());
        Output from = now.outputOf(load);
        if (from == null) {
            return PlainMove.NOTHING;
        }
        int board = random.nextInt(compiled.boardCount);
        for (int tries = 0; compiled.boardPanel[board] != compiled.boardPanel[from.board()] && tries < 1000; tries++) {
            board = random.nextInt(compiled.boardCount);
        }
        Output to = compiled.output(board, random.nextInt(compiled.outputCount(board)));
        int other = now.loadOnOutput(to.index());
        if (to == from
                || compiled.boardPanel[board] != compiled.boardPanel[from.board()]
                || !compiled.mayUse(load, to)
                || other != CompiledProject.NONE && !compiled.mayUse(other, from)) {
            return PlainMove.NOTHING;
        }
        return new PlainMove(sums -> wire(sums, load, to, other, from), sums -> wire(sums, load, from, other, to));
    }

    private static void wire(PlanSums sums, int load, Output output, int other, Output otherOutput) {
        sums.wire(load, output);
        if (other != CompiledProject.NONE) {
            sums.wire(other, otherOutput);
        }
    }

    private PlainMove setting(PlanSums now, Random random) {
        int board = random.nextInt(compiled.boardCount);
        Setting delay = now.clock().startDelay(board);
        Setting step = now.clock().step(board);
        boolean isDelay = random.nextBoolean();
        Setting[] offered = isDelay ? compiled.startDelays[board] : compiled.steps[board];
        Setting next = offered[random.nextInt(offered.length)];
        return new PlainMove(
                sums -> sums.set(board, isDelay ? next : delay, isDelay ? step : next),
                sums -> sums.set(board, delay, step));
    }

    /** Two loads change both places and outputs. */
    private PlainMove exchange(PlanSums now, Random random) {
        int load = random.nextInt(compiled.loadCount());
        int other = random.nextInt(compiled.loadCount());
        Place place = now.placeOf(load);
        Place otherPlace = now.placeOf(other);
        Output output = now.outputOf(load);
        Output otherOutput = now.outputOf(other);
        if (load == other || place == null || otherPlace == null || output == null || otherOutput == null) {
            return PlainMove.NOTHING;
        }
        if (!compiled.mayTake(load, otherPlace)
                || !compiled.mayTake(other, place)
                || !compiled.mayUse(load, otherOutput)
                || !compiled.mayUse(other, output)) {
            return PlainMove.NOTHING;
        }
        return new PlainMove(
                sums -> {
                    seat(sums, load, otherPlace, other, place);
                    wire(sums, load, otherOutput, other, output);
                },
                sums -> {
                    seat(sums, load, place, other, otherPlace);
                    wire(sums, load, output, other, otherOutput);
                });
    }
}
