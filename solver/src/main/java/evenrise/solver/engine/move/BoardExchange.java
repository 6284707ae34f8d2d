package evenrise.solver.engine.move;

import evenrise.solver.engine.state.BoardClock;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Plant;
import evenrise.solver.engine.state.Situation;
import java.util.SplittableRandom;

/** Two boards change their loads, in order, and sometimes their settings with them. */
final class BoardExchange implements Neighbourhood {
    private final Room room;

    BoardExchange(Situation situation) {
        room = new Room(situation);
    }

    @Override
    public boolean draw(Situation situation, Aim aim, SplittableRandom random, Sketch sketch) {
        Plant plant = situation.plant;
        Output output = situation.outputOf(aim.load(random));
        if (output == null) {
            return false;
        }
        int board = output.board();
        int other = random.nextInt(plant.boardCount);
        BoardOrder here = new BoardOrder(situation, board);
        BoardOrder there = new BoardOrder(situation, other);
        boolean fits = plant.outputCount(other) >= here.size() && plant.outputCount(board) >= there.size();
        if (other == board || !fits) {
            return false;
        }
        room.clear();
        room.leaveFor(here.loads(), other);
        room.leaveFor(there.loads(), board);
        wire(situation, here, other, sketch);
        wire(situation, there, board, sketch);
        if (random.nextBoolean() && plant.startDelays[board] == plant.startDelays[other]) {
            BoardClock clock = situation.clock();
            sketch.set(board, clock.startDelay(other), clock.step(other));
            sketch.set(other, clock.startDelay(board), clock.step(board));
        }
        return room.settle(here.loads(), other, random, sketch)
                && room.settle(there.loads(), board, random, sketch)
                && sketch.keepsRanges();
    }

    /** Each load keeps its ordinal where that board has room for all that follow; else they move up. */
    private static void wire(Situation situation, BoardOrder order, int to, Sketch sketch) {
        Plant plant = situation.plant;
        int outputs = plant.outputCount(to);
        int next = 0;
        for (int i = 0; i < order.size(); i++) {
            int load = order.load(i);
            int latest = outputs - (order.size() - i);
            int ordinal =
                    Math.max(next, Math.min(latest, situation.outputOf(load).ordinal()));
            sketch.wire(load, plant.output(to, ordinal));
            next = ordinal + 1;
        }
    }
}
