package evenrise.solver.engine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A change being thought out: new places and outputs of some loads, new settings of some boards. */
final class Sketch {
    private final Situation situation;
    private final Plant plant;
    private int[] loads = new int[16];
    private Place[] places = new Place[16];
    private Output[] outputs = new Output[16];
    private int loadCount;
    private final List<BoardChange> boards = new ArrayList<>(2);

    /** Another setting of one board. */
    record BoardChange(int board, Setting startDelay, Setting step) {}

    Sketch(Situation situation) {
        this.situation = situation;
        this.plant = situation.plant;
    }

    void clear() {
        loadCount = 0;
        boards.clear();
    }

    boolean isEmpty() {
        return loadCount == 0 && boards.isEmpty();
    }

    int loadCount() {
        return loadCount;
    }

    /** One of the loads that change. */
    int load(int position) {
        return loads[position];
    }

    /** The place that one of them will take, or has where it keeps its own. */
    Place place(int position) {
        return places[position];
    }

    /** The output that one of them will take, or has where it keeps its own. */
    Output output(int position) {
        return outputs[position];
    }

    /** The new settings, in the order drawn; a board may stand twice. */
    List<BoardChange> boardChanges() {
        return boards;
    }

    /** Boards that get another setting, in the order drawn; a board may stand twice. */
    int[] boards() {
        return boards.stream().mapToInt(BoardChange::board).toArray();
    }

    void place(int load, Place place) {
        int entry = entry(load);
        places[entry] = place;
    }

    void wire(int load, Output output) {
        int entry = entry(load);
        outputs[entry] = output;
    }

    void set(int board, Setting startDelay, Setting step) {
        boards.add(new BoardChange(board, startDelay, step));
    }

    private int entry(int load) {
        for (int i = 0; i < loadCount; i++) {
            if (loads[i] == load) {
                return i;
            }
        }
        if (loadCount == loads.length) {
            loads = Arrays.copyOf(loads, 2 * loadCount);
            places = Arrays.copyOf(places, 2 * loadCount);
            outputs = Arrays.copyOf(outputs, 2 * loadCount);
        }
        loads[loadCount] = load;
        places[loadCount] = situation.placeOf(load);
        outputs[loadCount] = situation.outputOf(load);
        return loadCount++;
    }

    /** Whether every load keeps its allowed panels, its fixed parts and the reach of its board. */
    boolean keepsRanges() {
        for (int i = 0; i < loadCount; i++) {
            Place place = places[i];
            Output output = outputs[i];
            if (place != null && !plant.mayTake(loads[i], place)) {
                return false;
            }
            if (output != null && !plant.mayUse(loads[i], output)) {
                return false;
            }
            if (place != null && output != null && !plant.reach[output.board()].get(place.panel())) {
                return false;
            }
        }
        return true;
    }

    /** Works the change into the situation itself, for whoever builds a plan without a search. */
    void apply() {
        for (int i = 0; i < loadCount; i++) {
            situation.place(loads[i], places[i]);
            situation.wire(loads[i], outputs[i]);
        }
        for (BoardChange change : boards) {
            situation.set(change.board, change.startDelay, change.step);
        }
        situation.settle();
    }
}
