package evenrise.solver.engine.fine;

import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import java.util.Arrays;

/** A change being tried: other places, outputs and instants of some loads, and another setting of a board or two. */
final class FineChange {
    private static final int MOST_BOARDS = 2;

    int[] loads = new int[32];
    Place[] places = new Place[32];
    Output[] outputs = new Output[32];
    int[] instants = new int[32];
    int count;
    final int[] boards = new int[MOST_BOARDS];
    final int[] delays = new int[MOST_BOARDS];
    final int[] steps = new int[MOST_BOARDS];
    int boardCount;
    /** Panel in which breakers change slots; {@link evenrise.solver.engine.state.CompiledProject#NONE} where none does. */
    int panel;

    void clear(int noPanel) {
        count = 0;
        boardCount = 0;
        panel = noPanel;
    }

    void add(int load, Place place, Output output, int instant) {
        if (count == loads.length) {
            loads = Arrays.copyOf(loads, 2 * count);
            places = Arrays.copyOf(places, 2 * count);
            outputs = Arrays.copyOf(outputs, 2 * count);
            instants = Arrays.copyOf(instants, 2 * count);
        }
        loads[count] = load;
        places[count] = place;
        outputs[count] = output;
        instants[count++] = instant;
    }

    /** Another start delay and step, by their positions among those offered. */
    void set(int board, int delay, int step) {
        boards[boardCount] = board;
        delays[boardCount] = delay;
        steps[boardCount++] = step;
    }
}
