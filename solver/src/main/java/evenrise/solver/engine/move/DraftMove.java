package evenrise.solver.engine.move;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import evenrise.solver.engine.state.Setting;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A change being thought out: new places and outputs of some loads, new settings of some boards. */
public final class DraftMove {
    private final PlanSums sums;
    private final CompiledProject compiled;
    private int[] loads = new int[16];
    private Place[] places = new Place[16];
    private Output[] outputs = new Output[16];
    private Setting[] times = new Setting[16];
    private int loadCount;
    private final List<BoardChange> boards = new ArrayList<>(2);

    /** Another setting of one board. */
    public record BoardChange(int board, Setting startDelay, Setting step) {}

    public DraftMove(PlanSums sums) {
        this.sums = sums;
        this.compiled = sums.compiled;
    }

    public void clear() {
        loadCount = 0;
        boards.clear();
    }

    public boolean isEmpty() {
        return loadCount == 0 && boards.isEmpty();
    }

    public int loadCount() {
        return loadCount;
    }

    /** One of the loads that change. */
    public int load(int position) {
        return loads[position];
    }

    /** The place that one of them will take, or has where it keeps its own. */
    public Place place(int position) {
        return places[position];
    }

    /** The output that one of them will take, or has where it keeps its own. */
    public Output output(int position) {
        return outputs[position];
    }

    /** The time of one of them, which counts only on an output that has one of its own. */
    public Setting time(int position) {
        return times[position];
    }

    /** The new settings, in the order drawn; a board may stand twice. */
    public List<BoardChange> boardChanges() {
        return boards;
    }

    /** Boards that get another setting, in the order drawn; a board may stand twice. */
    public int[] boards() {
        return boards.stream().mapToInt(BoardChange::board).toArray();
    }

    public void place(int load, Place place) {
        int entry = entry(load);
        places[entry] = place;
    }

    /** A load takes an output; where that has a time of its own, one next to when it comes on now. */
    public void wire(int load, Output output) {
        int entry = entry(load);
        outputs[entry] = output;
        if (output != null && compiled.times[output.board()] != null && sums.instantOf(load) != CompiledProject.NONE) {
            long wanted = compiled.instants.micros(sums.instantOf(load))
                    - sums.clock().startMicros(output.board());
            times[entry] = Setting.nearest(compiled.times[output.board()], wanted);
        }
    }

    /** A load's output comes on at a time of its own. */
    public void time(int load, Setting time) {
        int entry = entry(load);
        times[entry] = time;
    }

    /** A load takes the output of another, and its time where the output has one of its own. */
    public void wireAs(int load, int other) {
        Output output = sums.outputOf(other);
        wire(load, output);
        if (output != null && compiled.times[output.board()] != null) {
            time(load, sums.timeOf(other));
        }
    }

    public void set(int board, Setting startDelay, Setting step) {
        boards.add(new BoardChange(board, startDelay, step));
    }

    /** Whether a load of this change takes any slot of a place. */
    boolean touches(Place place) {
        for (int i = 0; i < loadCount; i++) {
            if (places[i] != null && shares(places[i], place)) {
                return true;
            }
        }
        return false;
    }

    /** Whether no two loads of this change take one slot, and whoever has one of their slots now leaves it. */
    boolean keepsRoom() {
        for (int i = 0; i < loadCount; i++) {
            for (int other = 0; other < i && places[i] != null; other++) {
                if (places[other] != null && shares(places[i], places[other])) {
                    return false;
                }
            }
            for (int k = 0; places[i] != null && k < places[i].slots().length; k++) {
                int occupant = sums.loadInSlot(places[i].slots()[k]);
                if (occupant != CompiledProject.NONE && !isDrawn(occupant)) {
                    return false;
                }
            }
        }
        return true;
    }

    private boolean isDrawn(int load) {
        for (int i = 0; i < loadCount; i++) {
            if (loads[i] == load) {
                return true;
            }
        }
        return false;
    }

    private static boolean shares(Place one, Place other) {
        for (int slot : one.slots()) {
            for (int taken : other.slots()) {
                if (slot == taken) {
                    return true;
                }
            }
        }
        return false;
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
            times = Arrays.copyOf(times, 2 * loadCount);
        }
        loads[loadCount] = load;
        places[loadCount] = sums.placeOf(load);
        outputs[loadCount] = sums.outputOf(load);
        times[loadCount] = sums.timeOf(load);
        return loadCount++;
    }

    /** Whether every load keeps its allowed panels, its fixed parts and the reach of its board. */
    public boolean keepsRanges() {
        for (int i = 0; i < loadCount; i++) {
            Place place = places[i];
            Output output = outputs[i];
            if (place != null && !compiled.mayTake(loads[i], place)) {
                return false;
            }
            if (output != null && !compiled.mayUse(loads[i], output)) {
                return false;
            }
            if (place != null && output != null && !compiled.reach[output.board()].get(place.panel())) {
                return false;
            }
        }
        return true;
    }

    /** What takes this change back once it has been worked into the sums. */
    public DraftMove inverse() {
        DraftMove inverse = new DraftMove(sums);
        for (int i = 0; i < loadCount; i++) {
            inverse.place(loads[i], sums.placeOf(loads[i]));
        }
        for (BoardChange change : boards) {
            inverse.set(
                    change.board,
                    sums.clock().startDelay(change.board),
                    sums.clock().step(change.board));
        }
        return inverse;
    }

    /** Works the change into the sums themselves, for whoever builds a plan without a search. */
    public void apply() {
        for (int i = 0; i < loadCount; i++) {
            sums.place(loads[i], places[i]);
            sums.wire(loads[i], outputs[i]);
            sums.time(loads[i], times[i]);
        }
        for (BoardChange change : boards) {
            sums.set(change.board, change.startDelay, change.step);
        }
        sums.settle();
    }
}
