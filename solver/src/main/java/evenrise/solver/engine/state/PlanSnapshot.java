package evenrise.solver.engine.state;

/** A plan by index, held still: who sits where, what switches each and how boards are set. Equal only to itself. */
public final class PlanSnapshot {
    private final Place[] places;
    private final Output[] outputs;
    private final Setting[] startDelays;
    private final Setting[] steps;
    private final Setting[] times;

    /**
     * Takes the arrays as they are; nobody may change them any more.
     *
     * @param places by load; null for one that has found no room
     * @param outputs by load; null for one that nothing switches
     * @param startDelays by board
     * @param steps by board
     * @param times by load, of its own where its output has one; null for others
     */
    public PlanSnapshot(Place[] places, Output[] outputs, Setting[] startDelays, Setting[] steps, Setting[] times) {
        this.places = places;
        this.outputs = outputs;
        this.startDelays = startDelays;
        this.steps = steps;
        this.times = times;
    }

    public int loadCount() {
        return places.length;
    }

    public int boardCount() {
        return steps.length;
    }

    public Place placeOf(int load) {
        return places[load];
    }

    public Output outputOf(int load) {
        return outputs[load];
    }

    public Setting startDelay(int board) {
        return startDelays[board];
    }

    public Setting step(int board) {
        return steps[board];
    }

    /** The time of a load whose output has one of its own; null for others. */
    public Setting time(int load) {
        return times[load];
    }
}
