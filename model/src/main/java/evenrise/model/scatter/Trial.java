package evenrise.model.scatter;

import evenrise.model.electrical.source.StepDip;
import evenrise.model.project.Scatter;
import evenrise.model.project.Spread;
import java.util.Arrays;
import java.util.random.RandomGenerator;

/**
 * One switch-on with its chances drawn, played again and again in the same arrays. A load that closes at T draws s·base +
 * v·a·excess·2^(−(t − T)/h) from then on, a being what its inrush and its angle leave of the excess, v the supply voltage
 * over the nominal one, s the greater of v and 1/v: an impedance draws in proportion to the voltage, a constant power in
 * inverse proportion, and which it is is not known. Since each only falls after it begins, a node's peak is at one of its loads' closing times, or before the first.
 */
final class Trial {
    /** An excess that has fallen to this part of itself is left out. */
    private static final double NEGLIGIBLE_RATIO = 1e-6;

    private static final double HALVINGS_TO_NEGLIGIBLE = Math.log(1 / NEGLIGIBLE_RATIO) / Math.log(2);
    private static final double LN2 = Math.log(2);

    private final TrialLoads loads;
    private final Scatter scatter;
    private final double[] closesSeconds;
    private final double[] leftAmps;
    private final int[] order;
    private final int[] active;
    private final double[] steadyAmps;
    private final double[] peaks;
    private final double[] dips;
    private final double perSourceAmp;
    private final double[] perFeederAmp;
    private double voltage;
    private double steady;

    /** @param perAmp percent of dip for an ampere of half-cycle rms, by node: the source's, then each feeder's */
    Trial(TrialLoads loads, Scatter scatter, double[] perAmp) {
        this.perSourceAmp = perAmp[0];
        this.perFeederAmp = perAmp;
        this.dips = new double[loads.nodes.size()];
        this.loads = loads;
        this.scatter = scatter;
        this.closesSeconds = new double[loads.count()];
        this.leftAmps = new double[loads.count()];
        this.order = new int[loads.count()];
        this.active = new int[loads.count()];
        this.steadyAmps = new double[loads.standingAmps.length];
        this.peaks = new double[loads.nodes.size()];
    }

    /** Instantaneous peak of each node in ampere, over its phases; the array is reused by the next call. */
    double[] peaks() {
        return peaks;
    }

    /** Deepest dip of each node in percent of the nominal voltage; the array is reused by the next call. */
    double[] dips() {
        return dips;
    }

    void play(RandomGenerator random) {
        voltage = voltage(random);
        steady = Math.max(voltage, 1 / voltage);
        draw(random);
        sort();
        for (int i = 0; i < steadyAmps.length; i++) {
            steadyAmps[i] = steady * loads.standingAmps[i];
        }
        Arrays.fill(peaks, 0);
        Arrays.fill(dips, 0);
        for (int node = 0; node < peaks.length; node++) {
            for (int phase = 0; phase < TrialLoads.PHASES; phase++) {
                peaks[node] = Math.max(peaks[node], steadyAmps[node * TrialLoads.PHASES + phase]);
            }
        }
        sweep();
    }

    private double voltage(RandomGenerator random) {
        double deviation = scatter.voltageDeviationPercent() / 100;
        double drawn = scatter.meanVoltagePercent() / 100 + deviation * cutNormal(random, Scatter.VOLTAGE_CUT);
        return Math.max(scatter.leastVoltageRatio(), drawn);
    }

    private void draw(RandomGenerator random) {
        double least = scatter.leastInrushPercent() / 100;
        for (int i = 0; i < closesSeconds.length; i++) {
            double offset =
                    scatter.closing() == Spread.UNIFORM ? 2 * random.nextDouble() - 1 : cutNormal(random, 3) / 3;
            closesSeconds[i] = loads.onSeconds[i] + loads.toleranceSeconds * offset;
            double inrush = least + (1 - least) * random.nextDouble();
            double angle = loads.hasAngle[i] ? Math.sin(Math.PI * random.nextDouble()) : 1;
            // The crest as a whole is scaled, the base below it is not.
            double within = loads.withinPeakAmps[i];
            leftAmps[i] = voltage * Math.max(0, inrush * angle * (loads.excessAmps[i] + within) - within);
            order[i] = i;
        }
    }

    /** Closing times are nearly in nominal order, for which insertion is linear. */
    private void sort() {
        for (int i = 1; i < order.length; i++) {
            int moving = order[i];
            int to = i;
            while (to > 0 && closesSeconds[order[to - 1]] > closesSeconds[moving]) {
                order[to] = order[to - 1];
                to--;
            }
            order[to] = moving;
        }
    }

    private void sweep() {
        int actives = 0;
        for (int step = 0; step < order.length; step++) {
            int closing = order[step];
            double now = closesSeconds[closing];
            int at = loads.panel[closing] * TrialLoads.PHASES;
            for (int phase = 0; phase < TrialLoads.PHASES; phase++) {
                if ((loads.phases[closing] & 1 << phase) != 0) {
                    steadyAmps[phase] += steady * loads.baseAmps[closing];
                    steadyAmps[at + phase] += steady * loads.baseAmps[closing];
                }
            }
            active[actives++] = closing;
            actives = peakAt(now, closing, actives);
        }
    }

    /** Raises the peaks of the supply and of the panel in which a load closes; drops what has died down. */
    private int peakAt(double now, int closing, int actives) {
        int here = loads.panel[closing];
        double supplyA = 0;
        double supplyB = 0;
        double supplyC = 0;
        double panelA = 0;
        double panelB = 0;
        double panelC = 0;
        double[] dipSource = new double[TrialLoads.PHASES];
        double[] dipFeeder = new double[TrialLoads.PHASES];
        int kept = 0;
        for (int k = 0; k < actives; k++) {
            int load = active[k];
            double halvings = (now - closesSeconds[load]) / loads.halfSeconds[load];
            if (halvings > HALVINGS_TO_NEGLIGIBLE) {
                continue;
            }
            active[kept++] = load;
            double amps = leftAmps[load] * Math.exp(-LN2 * halvings);
            int touched = loads.phases[load];
            double a = (touched & 1) != 0 ? amps : 0;
            double b = (touched & 2) != 0 ? amps : 0;
            double c = (touched & 4) != 0 ? amps : 0;
            supplyA += a;
            supplyB += b;
            supplyC += c;
            if (loads.panel[load] == here) {
                panelA += a;
                panelB += b;
                panelC += c;
            }
            if (perSourceAmp > 0) {
                addToDips(load, closing, amps, dipSource, dipFeeder);
            }
        }
        int at = here * TrialLoads.PHASES;
        peaks[0] = Math.max(peaks[0], greatest(0, supplyA, supplyB, supplyC));
        peaks[here] = Math.max(peaks[here], greatest(at, panelA, panelB, panelC));
        for (int phase = 0; phase < TrialLoads.PHASES && perSourceAmp > 0; phase++) {
            double source = perSourceAmp * dipSource[phase];
            double feeder = perFeederAmp[here] * dipFeeder[phase];
            dips[0] = Math.max(dips[0], StepDip.mostPercent(source));
            dips[here] = Math.max(dips[here], StepDip.mostPercent(source + feeder));
        }
        return kept;
    }

    /** The rms of what is left of an excess, and of the idle current that comes with what closes now. */
    private void addToDips(int load, int closing, double leftAmps, double[] source, double[] feeder) {
        double idle = load == closing ? steady * loads.idleAmps[load] : 0;
        double rms = leftAmps * loads.halfCycleRatio[load] + idle;
        for (int phase = 0; phase < TrialLoads.PHASES; phase++) {
            if ((loads.phases[load] & 1 << phase) != 0) {
                source[phase] += rms;
                feeder[phase] += loads.panel[load] == loads.panel[closing] ? loads.ways[load] * rms : 0;
            }
        }
    }

    private double greatest(int at, double a, double b, double c) {
        return Math.max(steadyAmps[at] + a, Math.max(steadyAmps[at + 1] + b, steadyAmps[at + 2] + c));
    }

    /** Standard normal, drawn anew until it lies within {@code most} deviations. */
    private static double cutNormal(RandomGenerator random, double most) {
        double drawn = random.nextGaussian();
        while (Math.abs(drawn) > most) {
            drawn = random.nextGaussian();
        }
        return drawn;
    }
}
