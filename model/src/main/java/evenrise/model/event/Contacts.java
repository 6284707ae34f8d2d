package evenrise.model.event;

import evenrise.model.rules.Upstream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Which breakers are closed, which phases are alive, hence who draws current from when to when. Knows nothing of why.
 * A load that loses any of its phases for too long draws its inrush anew when it has all of them again, on all its poles;
 * meanwhile it is taken to draw its base on those that are alive. What is behind a contactor loses its phases when that
 * drops out, until it closes.
 */
final class Contacts {
    private final ConnectedLoads connected;
    private final boolean[] closed;
    private final boolean[] fed;
    private final double[] darkSince;
    private final LoadDraw[] current;
    private final LoadDraw[] energising;
    private final List<LoadDraw> past = new ArrayList<>();
    private Grid grid;
    private int loadsOn;

    /** All that is unswitched is on, and has been for long; nothing else is. */
    Contacts(ConnectedLoads connected, Grid grid) {
        this.connected = connected;
        this.grid = grid;
        closed = new boolean[connected.count()];
        fed = new boolean[connected.count()];
        darkSince = new double[connected.count()];
        Arrays.fill(darkSince, Double.NaN);
        current = new LoadDraw[connected.count()];
        energising = new LoadDraw[connected.windings.size()];
        for (int n = 0; n < connected.count(); n++) {
            if (!connected.switched[n]) {
                closed[n] = true;
                fed[n] = true;
                current[n] = new LoadDraw(
                        n,
                        connected.phases[n],
                        shares(n, connected.phases[n]),
                        -1e9,
                        -1e9,
                        Double.POSITIVE_INFINITY,
                        Double.NaN,
                        0,
                        false);
            }
        }
    }

    boolean isClosed(int load) {
        return closed[load];
    }

    /** Whether it is connected to a phase that is alive. */
    boolean isAlive(int load) {
        return closed[load] && alive(load).length > 0;
    }

    /** Whether what it draws is what it is used for. */
    boolean isInUse(int load) {
        return current[load] != null && current[load].isInUse();
    }

    Grid grid() {
        return grid;
    }

    /** Switched loads whose breaker is closed. */
    int loadsOn() {
        return loadsOn;
    }

    /**
     * The breaker of a load closes.
     *
     * @param earliestSeconds when it may have closed at the earliest, of the same command
     * @param latestSeconds when at the latest
     */
    void close(int load, double atSeconds, double earliestSeconds, double latestSeconds) {
        if (closed[load]) {
            return;
        }
        closed[load] = true;
        loadsOn++;
        int[] alive = alive(load);
        fed[load] = isFed(load, false);
        darkSince[load] = fed[load] ? Double.NaN : Double.NEGATIVE_INFINITY;
        current[load] = new LoadDraw(
                load,
                alive,
                shares(load, alive),
                atSeconds,
                Math.min(atSeconds, earliestSeconds),
                Double.POSITIVE_INFINITY,
                fed[load] ? atSeconds : Double.NaN,
                Math.max(atSeconds, latestSeconds),
                false);
    }

    /** All has come to rest, and the show runs: what is on is in use from now on. */
    void use(double atSeconds) {
        for (int n = 0; n < connected.count(); n++) {
            LoadDraw feeding = current[n];
            boolean changes = connected.useAmps[n] > connected.exact[n].baseAmps();
            if (feeding != null && changes && !feeding.isInUse() && feeding.fromSeconds() < atSeconds) {
                end(n, atSeconds);
                current[n] = feeding.inUseFrom(atSeconds);
            }
        }
    }

    void open(int load, double atSeconds) {
        if (closed[load]) {
            closed[load] = false;
            loadsOn--;
            end(load, atSeconds);
        }
    }

    /**
     * What was drawn anew.
     *
     * @param loads that draw their inrush
     * @param windings transformers that draw theirs
     */
    record Anew(List<Integer> loads, List<Integer> windings) {
        boolean isNothing() {
            return loads.isEmpty() && windings.isEmpty();
        }
    }

    /** Voltages change, or what feeds what. */
    Anew energise(Grid after, double atSeconds) {
        int[][] wasAlive = new int[connected.count()][];
        for (int n = 0; n < connected.count(); n++) {
            wasAlive[n] = alive(n);
        }
        Grid before = grid;
        grid = after;
        List<Integer> anew = new ArrayList<>();
        for (int n = 0; n < connected.count(); n++) {
            if (!closed[n] || connected.phases[n].length == 0) {
                continue;
            }
            boolean wasFed = fed[n];
            fed[n] = isFed(n, wasFed);
            double inrush = current[n] == null ? Double.NaN : current[n].inrushSeconds();
            double fullUntil = current[n] == null ? 0 : current[n].boundFullUntilSeconds();
            boolean isInUse = current[n] != null && current[n].isInUse();
            boolean changes = !Arrays.equals(wasAlive[n], alive(n))
                    || !Upstream.isSame(before.path(connected.node[n]), grid.path(connected.node[n]));
            if (wasFed && !fed[n]) {
                darkSince[n] = atSeconds;
            } else if (!wasFed && fed[n]) {
                double darkMillis = (atSeconds - darkSince[n]) * 1000;
                darkSince[n] = Double.NaN;
                if (darkMillis > connected.keepsChargeMillis[n] + 1e-6 && !staysStopped(n, darkMillis)) {
                    inrush = atSeconds;
                    fullUntil = atSeconds;
                    changes = true;
                    anew.add(n);
                }
            }
            if (changes) {
                end(n, atSeconds);
                int[] alive = alive(n);
                current[n] = new LoadDraw(
                        n,
                        alive,
                        shares(n, alive),
                        atSeconds,
                        atSeconds,
                        Double.POSITIVE_INFINITY,
                        inrush,
                        fullUntil,
                        isInUse);
            }
        }
        return new Anew(anew, windings(before, atSeconds));
    }

    /** A transformer whose primary returns, on any of its phases, draws its inrush in full; one that loses it ends to. */
    private List<Integer> windings(Grid before, double atSeconds) {
        List<Integer> anew = new ArrayList<>();
        for (int k = 0; k < energising.length; k++) {
            ConnectedLoads.Winding it = connected.windings.get(k);
            boolean returns = false;
            List<Integer> alive = new ArrayList<>();
            for (int phase : it.primaryPhases()) {
                double now = grid.incoming(it.point(), phase);
                double needed = connected.behaviour.reinrushPercent();
                returns |= before.incoming(it.point(), phase) < needed && now >= needed;
                if (now > 0) {
                    alive.add(phase);
                }
            }
            int parent = grid.distribution.points().get(it.point()).parent();
            boolean moves = before.distribution.points().get(it.point()).parent() != parent;
            if (energising[k] != null && (returns || alive.isEmpty() || moves)) {
                past.add(energising[k].until(atSeconds));
                energising[k] = null;
            }
            if (returns) {
                anew.add(k);
                int[] phases = alive.stream().mapToInt(Integer::intValue).toArray();
                energising[k] = new LoadDraw(
                        connected.winding(k),
                        phases,
                        Shares.of(grid.path(parent), phases),
                        atSeconds,
                        atSeconds,
                        Double.POSITIVE_INFINITY,
                        atSeconds,
                        atSeconds,
                        false);
            }
        }
        return anew;
    }

    /**
     * Whether it is a motor whose starter has dropped out for good. It goes on to count as what it drew: somebody may have
     * started it again, and its start is an event of its own.
     */
    private boolean staysStopped(int load, double darkMillis) {
        return connected.isMotor[load]
                && !connected.motorsReturn
                && darkMillis > connected.behaviour.brownoutHoldSeconds() * 1000;
    }

    /** Who has drawn current, from when to when. */
    List<LoadDraw> feedings() {
        List<LoadDraw> all = new ArrayList<>(past);
        for (LoadDraw each : current) {
            if (each != null) {
                all.add(each);
            }
        }
        for (LoadDraw each : energising) {
            if (each != null) {
                all.add(each);
            }
        }
        return all;
    }

    private void end(int load, double atSeconds) {
        if (current[load] != null) {
            past.add(current[load].until(atSeconds));
            current[load] = null;
        }
    }

    private Shares shares(int load, int[] alive) {
        return Shares.of(grid.path(connected.node[load]), alive);
    }

    private int[] alive(int load) {
        return grid.isOpen(load)
                ? new int[0]
                : Arrays.stream(connected.phases[load])
                        .filter(phase -> grid.most(connected.node[load], phase) > 0)
                        .toArray();
    }

    /** Whether every phase of the load has enough voltage to keep it charged, and its contactor, if it has one, closed. */
    private boolean isFed(int load, boolean wasFed) {
        if (grid.isOpen(load)) {
            return false;
        }
        for (int phase : connected.phases[load]) {
            if (grid.least(connected.node[load], phase) < connected.neededPercent[load]) {
                return false;
            }
        }
        return connected.closesFromPercent[load] == 0 || isHeld(load, wasFed);
    }

    /** A contactor that has dropped out needs more to close than it did to stay; whichever phase its coil is on. */
    private boolean isHeld(int load, boolean wasFed) {
        double needed = wasFed ? connected.behaviour.contactorDropsPercent() : connected.closesFromPercent[load];
        int point = connected.node[load];
        return grid.distribution.points().get(point).system().phases().stream()
                .allMatch(phase -> grid.least(point, phase.ordinal()) >= needed);
    }
}
