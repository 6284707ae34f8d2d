package evenrise.model.event;

import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.project.Phase;
import evenrise.model.rules.NodeFigures;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;

/**
 * Sums what every load draws, for each node and phase, at each instant at which something begins or ends: once as the
 * breakers really closed, once as a bound at nominal voltage. Currents only fall in between, so these instants have every maximum.
 *
 * <p>Time: instants × (loads whose excess has not died away + nodes).
 */
final class Ammeter {
    private static final double NOTHING_AMPS = 1e-9;

    private final ConnectedLoads connected;
    private final List<LoadDraw> byStart;
    private final List<LoadDraw> byBoundStart;
    private final List<LoadDraw> byEnd;
    private final List<List<Phase>> phases;
    private final double[][] standing;
    private final double[][] boundStanding;
    private List<LoadDraw> decaying = new ArrayList<>();
    private List<LoadDraw> boundDecaying = new ArrayList<>();
    private final List<PhaseReading> readings = new ArrayList<>();
    private double worstOvershootAmps;
    private int nextStart;
    private int nextBoundStart;
    private int nextEnd;

    /** Told of the currents of all nodes at one instant. */
    interface Reader {
        /**
         * @param real by node and phase
         * @param bound the same
         */
        void read(double atSeconds, double[][] real, double[][] bound);
    }

    Ammeter(ConnectedLoads connected, List<LoadDraw> feedings) {
        this.connected = connected;
        List<LoadDraw> lasting = feedings.stream().filter(LoadDraw::lasts).toList();
        byStart = sorted(lasting, Comparator.comparingDouble(LoadDraw::fromSeconds));
        byBoundStart = sorted(lasting, Comparator.comparingDouble(LoadDraw::boundFromSeconds));
        byEnd = sorted(lasting, Comparator.comparingDouble(LoadDraw::toSeconds));
        phases = connected.layout.distribution().points().stream()
                .map(point -> point.system().phases())
                .toList();
        standing = nothing();
        boundStanding = nothing();
    }

    private double[][] nothing() {
        return phases.stream().map(each -> new double[each.size()]).toArray(double[][]::new);
    }

    private static List<LoadDraw> sorted(List<LoadDraw> feedings, Comparator<LoadDraw> by) {
        return feedings.stream().sorted(by).toList();
    }

    /** Currents at the instants at which something begins or ends, of the nodes that it concerns. */
    List<PhaseReading> readings() {
        return readings;
    }

    /** How far a real current was above its bound at the worst; 0 unless something is wrong with this software. */
    double worstOvershootAmps() {
        return worstOvershootAmps;
    }

    /**
     * Walks through time once.
     *
     * @param rests filled in: for each of {@code marks}, whether all earlier inrush had died away
     */
    void walk(double[] marks, boolean[] rests, Reader reader) {
        TreeSet<Double> instants = new TreeSet<>();
        for (double mark : marks) {
            instants.add(mark);
        }
        for (LoadDraw each : byStart) {
            if (each.fromSeconds() >= 0) {
                instants.add(each.fromSeconds());
            }
            if (each.boundFromSeconds() >= 0) {
                instants.add(each.boundFromSeconds());
            }
            if (Double.isFinite(each.toSeconds())) {
                instants.add(each.toSeconds());
            }
        }
        boolean[] touched = new boolean[connected.nodes.size()];
        for (double now : instants) {
            Arrays.fill(touched, false);
            end(now, touched);
            decaying = fresh(decaying, now, false);
            boundDecaying = fresh(boundDecaying, now, true);
            begin(now, touched);
            for (int i = 0; i < marks.length; i++) {
                if (marks[i] == now) {
                    rests[i] = decaying.stream().noneMatch(each -> hasInrushLeft(each, now));
                }
            }
            double[][] real = sum(standing, decaying, now, false);
            double[][] bound = sum(boundStanding, boundDecaying, now, true);
            compare(real, bound);
            note(now, touched, real, bound);
            reader.read(now, real, bound);
        }
    }

    /** Whether it draws inrush that began before {@code now}. */
    private boolean hasInrushLeft(LoadDraw feeding, double now) {
        return feeding.inrushSeconds() < now && excess(feeding, now, false) >= NOTHING_AMPS;
    }

    private void end(double now, boolean[] touched) {
        for (; nextEnd < byEnd.size() && byEnd.get(nextEnd).toSeconds() <= now; nextEnd++) {
            LoadDraw each = byEnd.get(nextEnd);
            stand(standing, each, -1);
            stand(boundStanding, each, -1);
            touch(each, touched);
        }
    }

    private void begin(double now, boolean[] touched) {
        for (; nextStart < byStart.size() && byStart.get(nextStart).fromSeconds() <= now; nextStart++) {
            LoadDraw each = byStart.get(nextStart);
            stand(standing, each, 1);
            decaying.add(each);
            touch(each, touched);
        }
        for (;
                nextBoundStart < byBoundStart.size()
                        && byBoundStart.get(nextBoundStart).boundFromSeconds() <= now;
                nextBoundStart++) {
            LoadDraw each = byBoundStart.get(nextBoundStart);
            stand(boundStanding, each, 1);
            boundDecaying.add(each);
        }
    }

    private void stand(double[][] sums, LoadDraw feeding, int sign) {
        int load = feeding.load();
        double base = feeding.isInUse() ? connected.useAmps[load] : connected.exact[load].baseAmps();
        feeding.shares().addTo(sums, sign * base);
    }

    private static void touch(LoadDraw feeding, boolean[] touched) {
        for (int node : feeding.shares().nodes()) {
            touched[node] = true;
        }
    }

    private double excess(LoadDraw feeding, double now, boolean isBound) {
        InrushEnvelope envelope = connected.exact[feeding.load()];
        return isBound
                ? feeding.boundExcessAmps(envelope.excessAmps(), envelope.halfLifeSeconds(), now)
                : feeding.excessAmps(envelope.excessAmps(), envelope.halfLifeSeconds(), now);
    }

    /** Those that still draw and still decay. */
    private List<LoadDraw> fresh(List<LoadDraw> some, double now, boolean isBound) {
        double least = isBound ? NOTHING_AMPS / 2 : NOTHING_AMPS;
        List<LoadDraw> kept = new ArrayList<>(some.size());
        for (LoadDraw each : some) {
            if (each.toSeconds() > now && excess(each, now, isBound) >= least) {
                kept.add(each);
            }
        }
        return kept;
    }

    private double[][] sum(double[][] bases, List<LoadDraw> some, double now, boolean isBound) {
        double[][] sums = new double[bases.length][];
        for (int node = 0; node < bases.length; node++) {
            sums[node] = bases[node].clone();
        }
        for (LoadDraw each : some) {
            each.shares().addTo(sums, excess(each, now, isBound));
        }
        return sums;
    }

    private void compare(double[][] real, double[][] bound) {
        for (int node = 0; node < real.length; node++) {
            for (int phase = 0; phase < real[node].length; phase++) {
                worstOvershootAmps = Math.max(worstOvershootAmps, real[node][phase] - bound[node][phase]);
            }
        }
    }

    private void note(double now, boolean[] touched, double[][] real, double[][] bound) {
        for (int node = 0; node < touched.length; node++) {
            if (touched[node]) {
                for (int phase = 0; phase < real[node].length; phase++) {
                    Phase name = phases.get(node).get(phase);
                    readings.add(new PhaseReading(now, nodeName(node), name, real[node][phase], bound[node][phase]));
                }
            }
        }
    }

    String nodeName(int node) {
        return node == 0 ? NodeFigures.SUPPLY : connected.nodes.get(node).node();
    }
}
