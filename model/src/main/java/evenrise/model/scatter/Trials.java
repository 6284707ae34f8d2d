package evenrise.model.scatter;

import evenrise.model.electrical.source.Network;
import evenrise.model.electrical.source.UnitDips;
import evenrise.model.plan.RangePeak;
import evenrise.model.project.Overlap;
import evenrise.model.project.Project;
import evenrise.model.project.Scatter;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.SupplyVoltage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.function.BooleanSupplier;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Many switch-ons with their chances drawn. Each trial has a generator of its own from the seed and its number, so that a
 * result depends on neither threads nor order; memory does not grow with the number of trials.
 */
public final class Trials {
    /** What is reported, in percent. */
    private static final double[] PERCENTS = {50, 95, 99};

    /** No dip is deeper. */
    private static final double WHOLE_VOLTAGE_PERCENT = 100;

    /** A generator whose streams are unrelated even for neighbouring seeds. */
    private static final RandomGeneratorFactory<RandomGenerator> GENERATORS =
            RandomGeneratorFactory.of("L64X128MixRandom");

    private static final long BETWEEN_SEEDS = 0x9E3779B97F4A7C15L;

    private final TrialLoads loads;
    private final Scatter scatter;
    private final Overlap overlap;
    private final List<RangePeak> ranges;
    private final double[] perAmp;
    private final TreeDips tree;
    private final Tally[] peaks;
    private final Tally[] dips;

    private Trials(Layout layout, Scatter scatter, Optional<Network> network, Optional<UnitDips> units) {
        this.loads = new TrialLoads(layout, scatter.angleUpToHalfMillis());
        this.scatter = scatter;
        this.ranges = layout.peaksOver(SupplyVoltage.of(layout.project()).with(scatter));
        double volts = layout.project().supply().lineToNeutralVolts();
        this.overlap = layout.project().overlap();
        boolean hasDips = hasDips(layout.project());
        Optional<Network> star = hasDips && isStar(layout.project()) ? network : Optional.empty();
        this.tree = TreeDips.of(layout, loads, hasDips && star.isEmpty() ? units : Optional.empty());
        this.perAmp = loads.nodes.stream()
                .mapToDouble(
                        node -> star.map(it -> 100 * ohms(it, node) / volts).orElse(0.0))
                .toArray();
        this.peaks = peakTallies();
        this.dips = dipTallies();
    }

    /**
     * The scatter of the peak and dip of the supply, each panel and each node when the sequences run as planned.
     *
     * @param network empty where it is not known: no dips of a star then
     * @param units the same of a tree
     * @param count of trials; at least 1
     * @param threads that share them; at least 1
     */
    public static List<NodeScatter> of(
            Layout layout,
            Scatter scatter,
            Optional<Network> network,
            Optional<UnitDips> units,
            int count,
            long seed,
            int threads) {
        Trials trials = new Trials(layout, scatter, network, units);
        int lanes = Math.min(threads, count);
        onThreads(
                lanes,
                () -> IntStream.range(0, lanes)
                        .parallel()
                        .forEach(lane -> trials.lane(lane, count, seed, lanes, () -> false)));
        return trials.results();
    }

    /** Nothing is drawn yet: for {@link #draw} and {@link #add}. */
    public static Trials none(Layout layout, Scatter scatter, Optional<Network> network, Optional<UnitDips> units) {
        return new Trials(layout, scatter, network, units);
    }

    /**
     * Draws some of the trials that {@link #of} draws, by one thread.
     *
     * @param from number of the first, from 0
     * @param to number after the last
     * @param stopped asked after each; what is there then is not what was asked for
     */
    public void draw(int from, int to, long seed, BooleanSupplier stopped) {
        lane(from, to, seed, 1, stopped);
    }

    /** What has been drawn, as bytes for {@link #add}. */
    public byte[] bytes() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DataOutputStream out = new DataOutputStream(bytes)) {
            for (int node = 0; node < peaks.length; node++) {
                peaks[node].write(out);
                dips[node].write(out);
            }
        } catch (IOException e) {
            throw new IllegalStateException("memory takes what is written", e);
        }
        return bytes.toByteArray();
    }

    /**
     * Adds what was drawn elsewhere of the same plan; the order makes no difference, bit for bit.
     *
     * @throws IllegalArgumentException where the bytes are none of such trials
     */
    public void add(byte[] others) {
        try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(others))) {
            for (int node = 0; node < peaks.length; node++) {
                peaks[node].add(in);
                dips[node].add(in);
            }
        } catch (IOException e) {
            throw new IllegalArgumentException("no trials of this plan", e);
        }
    }

    /** Whether dips are drawn: of several systems at once they add up, which is not worked out here. */
    public static boolean hasDips(Project project) {
        return !(project.hasClocks() && project.overlap() == Overlap.ANY);
    }

    private static boolean isStar(Project project) {
        return project.nodes().isEmpty()
                && project.panels().stream().allMatch(panel -> panel.fedFrom().isEmpty());
    }

    private static double ohms(Network network, String node) {
        return node.equals(NodeFigures.SUPPLY)
                ? network.source().magnitudeOhms()
                : network.feeders().containsKey(node)
                        ? network.feeders().get(node).magnitudeOhms()
                        : 0;
    }

    private void lane(int first, int end, long seed, int lanes, BooleanSupplier stopped) {
        Tally[] ownPeaks = peakTallies();
        Tally[] ownDips = dipTallies();
        Trial trial = new Trial(loads, scatter, overlap, perAmp, tree);
        for (int number = first; number < end && !stopped.getAsBoolean(); number += lanes) {
            trial.play(GENERATORS.create(seed * BETWEEN_SEEDS + number));
            for (int node = 0; node < ownPeaks.length; node++) {
                ownPeaks[node].add(trial.peaks()[node]);
                ownDips[node].add(trial.dips()[node]);
            }
        }
        synchronized (this) {
            for (int node = 0; node < ownPeaks.length; node++) {
                peaks[node].add(ownPeaks[node]);
                dips[node].add(ownDips[node]);
            }
        }
    }

    private Tally[] peakTallies() {
        return ranges.stream().map(range -> new Tally(range.rangeAmps())).toArray(Tally[]::new);
    }

    private Tally[] dipTallies() {
        return Stream.generate(() -> new Tally(WHOLE_VOLTAGE_PERCENT))
                .limit(loads.nodes.size())
                .toArray(Tally[]::new);
    }

    /** The scatter of all that has been drawn and added. */
    public List<NodeScatter> results() {
        return IntStream.range(0, peaks.length)
                .mapToObj(node -> new NodeScatter(
                        loads.nodes.get(node),
                        peaks[node].percentiles(PERCENTS),
                        peaks[node].greatest(),
                        ranges.get(node).rangeAmps(),
                        ranges.get(node).rangeBound(),
                        perAmp[0] > 0 || tree.tells(node) ? dips[node].percentiles(PERCENTS) : List.of(),
                        dips[node].greatest()))
                .toList();
    }

    private static void onThreads(int threads, Runnable work) {
        ForkJoinPool pool = new ForkJoinPool(threads);
        try {
            pool.submit(work).get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted", e);
        } catch (ExecutionException e) {
            throw new IllegalStateException(e.getCause());
        } finally {
            pool.shutdown();
        }
    }
}
