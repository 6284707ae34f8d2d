package evenrise.solver.engine.move;

import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.Plant;
import evenrise.solver.engine.state.Situation;
import java.util.SplittableRandom;

/** Two loads change both their outputs and their panels, whatever the poles; each takes a spot that is or becomes free. */
final class LoadExchange implements Neighbourhood {
    private static final int TRIES = 8;
    /** One draw in so many takes any two loads; else they are of one group, or both without one. */
    private static final int BOLD = 4;

    private final Room room;

    LoadExchange(Situation situation) {
        room = new Room(situation);
    }

    @Override
    public boolean draw(Situation situation, Aim aim, SplittableRandom random, Sketch sketch) {
        Plant plant = situation.plant;
        int one = aim.load(random);
        boolean bold = random.nextInt(BOLD) == 0;
        int other = one;
        for (int i = 0; i < TRIES && !suits(situation, one, other, bold); i++) {
            other = random.nextInt(plant.loadCount());
        }
        if (!suits(situation, one, other, bold)) {
            return false;
        }
        Place from = situation.placeOf(one);
        Place to = situation.placeOf(other);
        sketch.wire(one, situation.outputOf(other));
        sketch.wire(other, situation.outputOf(one));
        if (from.panel() != to.panel()) {
            room.clear();
            room.leave(from);
            room.leave(to);
            boolean oneFirst = plant.poles[one] >= plant.poles[other];
            int larger = oneFirst ? one : other;
            int smaller = oneFirst ? other : one;
            Place largerTo = room.take(larger, oneFirst ? to.panel() : from.panel(), random);
            Place smallerTo = room.take(smaller, oneFirst ? from.panel() : to.panel(), random);
            if (largerTo == null || smallerTo == null) {
                return false;
            }
            sketch.place(larger, largerTo);
            sketch.place(smaller, smallerTo);
        }
        return sketch.keepsRanges();
    }

    private static boolean suits(Situation situation, int one, int other, boolean bold) {
        Plant plant = situation.plant;
        boolean both = situation.placeOf(one) != null
                && situation.placeOf(other) != null
                && (situation.outputOf(one) == null) == (situation.outputOf(other) == null);
        return one != other && both && (bold || plant.group[one] == plant.group[other]);
    }
}
