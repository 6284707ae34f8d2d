package evenrise.model.event;

import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Upstream;
import java.util.Arrays;
import java.util.List;

/** What feeds the plant: voltages of its sources, what feeders pass on, what has tripped or is being transferred. */
final class Mains {
    private static final int PHASES = Phase.values().length;

    private final ConnectedLoads connected;
    private final double[][] percent;
    private final boolean[] tripped;
    private final boolean[] changing;
    private final boolean[] onAlternate;
    private final boolean[] openLoads;
    private Distribution distribution;
    private Upstream upstream;

    /** All at nominal voltage and fed as usual. */
    Mains(ConnectedLoads connected) {
        this.connected = connected;
        distribution = connected.layout.distribution();
        upstream = connected.upstream;
        int count = distribution.points().size();
        percent = new double[count][PHASES];
        for (double[] each : percent) {
            Arrays.fill(each, 100);
        }
        tripped = new boolean[count];
        changing = new boolean[count];
        onAlternate = new boolean[count];
        openLoads = new boolean[connected.count()];
    }

    Grid grid() {
        double[][] passed = new double[percent.length][];
        for (int at = 0; at < percent.length; at++) {
            passed[at] = tripped[at] || changing[at] ? new double[PHASES] : percent[at];
        }
        return new Grid(distribution, upstream, passed, openLoads);
    }

    /** The voltage of a source, or what a feeder passes on; of some phases, or all. */
    void set(int point, double value, List<Phase> phases) {
        for (Phase phase : Phase.values()) {
            if (phases.isEmpty() || phases.contains(phase)) {
                percent[point][phase.ordinal()] = value;
            }
        }
    }

    /** The device that feeds a point opens, or closes again. */
    void trip(int point, boolean open) {
        tripped[point] = open;
    }

    /** A load's breaker trips, or closes again. */
    void tripLoad(int load, boolean open) {
        openLoads[load] = open;
    }

    /** The point leaves the one source and has not reached the other. */
    void beginTransfer(int point, boolean toAlternate) {
        changing[point] = true;
        onAlternate[point] = toAlternate;
    }

    boolean isOnAlternate(int point) {
        return onAlternate[point];
    }

    boolean isChanging(int point) {
        return changing[point];
    }

    /** The point is on what it was transferred to. */
    void endTransfer(int point) {
        changing[point] = false;
        distribution = connected.fedWith(onAlternate);
        upstream = Upstream.of(distribution);
    }
}
