package evenrise.model.event;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Which breakers are closed, which phases are alive, hence who draws current from when to when. Knows nothing of why.
 * A load that loses any of its phases for too long draws its inrush anew when it has all of them again, on all its poles;
 * meanwhile it is taken to draw its base on those that are alive.
 */
final class Contacts {
    private final ConnectedLoads connected;
    private final boolean[] closed;
    private final double[] voltPercent;
    private final double[] darkSince;
    private final Feeding[] current;
    private final List<Feeding> past = new ArrayList<>();
    private int loadsOn;

    /** All that is unswitched is on, and has been for long; nothing else is. */
    Contacts(ConnectedLoads connected) {
        this.connected = connected;
        closed = new boolean[connected.count()];
        voltPercent = new double[connected.systemPhases.size()];
        Arrays.fill(voltPercent, 100);
        darkSince = new double[connected.count()];
        Arrays.fill(darkSince, Double.NaN);
        current = new Feeding[connected.count()];
        for (int n = 0; n < connected.count(); n++) {
            if (!connected.switched[n]) {
                closed[n] = true;
                current[n] =
                        new Feeding(n, connected.phases[n], -1e9, -1e9, Double.POSITIVE_INFINITY, Double.NaN, 0, false);
            }
        }
    }

    boolean isClosed(int load) {
        return closed[load];
    }

    /** Switched loads whose breaker is closed. */
    int loadsOn() {
        return loadsOn;
    }

    double voltPercent(int phase) {
        return voltPercent[phase];
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
        boolean isFed = isFed(load);
        darkSince[load] = isFed ? Double.NaN : Double.NEGATIVE_INFINITY;
        current[load] = new Feeding(
                load,
                alive,
                atSeconds,
                Math.min(atSeconds, earliestSeconds),
                Double.POSITIVE_INFINITY,
                isFed ? atSeconds : Double.NaN,
                Math.max(atSeconds, latestSeconds),
                false);
    }

    /** All has come to rest, and the show runs: what is on is in use from now on. */
    void use(double atSeconds) {
        for (int n = 0; n < connected.count(); n++) {
            Feeding feeding = current[n];
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
     * The voltage of a phase changes.
     *
     * @return loads that draw their inrush anew
     */
    List<Integer> energise(double[] percent, double atSeconds) {
        boolean[] wasFed = new boolean[connected.count()];
        int[][] wasAlive = new int[connected.count()][];
        for (int n = 0; n < connected.count(); n++) {
            wasFed[n] = isFed(n);
            wasAlive[n] = alive(n);
        }
        System.arraycopy(percent, 0, voltPercent, 0, voltPercent.length);
        List<Integer> anew = new ArrayList<>();
        for (int n = 0; n < connected.count(); n++) {
            if (!closed[n] || connected.phases[n].length == 0) {
                continue;
            }
            boolean isFed = isFed(n);
            double inrush = current[n] == null ? Double.NaN : current[n].inrushSeconds();
            double fullUntil = current[n] == null ? 0 : current[n].boundFullUntilSeconds();
            boolean isInUse = current[n] != null && current[n].isInUse();
            boolean changes = !Arrays.equals(wasAlive[n], alive(n));
            if (wasFed[n] && !isFed) {
                darkSince[n] = atSeconds;
            } else if (!wasFed[n] && isFed) {
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
                current[n] = new Feeding(
                        n, alive(n), atSeconds, atSeconds, Double.POSITIVE_INFINITY, inrush, fullUntil, isInUse);
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
    List<Feeding> feedings() {
        List<Feeding> all = new ArrayList<>(past);
        for (Feeding each : current) {
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

    private int[] alive(int load) {
        return Arrays.stream(connected.phases[load])
                .filter(phase -> voltPercent[phase] > 0)
                .toArray();
    }

    /** Whether every phase of the load has enough voltage to keep it charged. */
    private boolean isFed(int load) {
        for (int phase : connected.phases[load]) {
            if (voltPercent[phase] < connected.neededPercent[load]) {
                return false;
            }
        }
        return true;
    }
}
