package evenrise.model.scatter;

import evenrise.model.electrical.source.StepDip;
import evenrise.model.project.Overlap;
import evenrise.model.project.Scatter;
import evenrise.model.project.Spread;
import java.util.Arrays;
import java.util.random.RandomGenerator;

/**
 * One switch-on with its chances drawn, played again and again in the same arrays. A load that closes at T draws s·base +
 * v·a·excess·2^(−(t − T)/h) from then on, a being what its inrush and its angle leave of the excess, v the supply voltage
 * over the nominal one, s the greater of v and 1/v: an impedance draws in proportion to the voltage, a constant power in
 * inverse proportion, and which it is is not known. Since each only falls after it begins, a place's peak is at one of its
 * loads' closing times, or before the first. Loads behind one contactor close at one instant and at one angle. Where systems
 * have clocks of their own, chance is drawn within each command; between them stands the worst, as {@link
 * evenrise.model.rules.NodeStart} has it.
 */
final class Trial {
    /** An excess that has fallen below this is left out. */
    private static final double NEGLIGIBLE_AMPS = 1e-9;

    private static final double LN2 = Math.log(2);

    private final TrialLoads loads;
    private final Scatter scatter;
    private final Overlap overlap;
    private final double[] closesSeconds;
    private final double[] sines;
    private final double[] leftAmps;
    private final int[] order;
    private final int[] active;
    private final double[] steadyAmps;
    private final double[] sums;
    /** By command and place: the greatest while it is carried out, without what it does not switch. */
    private final double[][] starting;

    private final double[] peaks;
    private final double[] dips;
    private final TreeDips tree;
    private final double[] treePercent;
    private final double perSourceAmp;
    private final double[] perFeederAmp;
    private double voltage;
    private double steady;

    /**
     * @param overlap of the commands, where there are several
     * @param perAmp percent of dip for an ampere of half-cycle rms, by node: the source's, then each feeder's; 0 for no dips
     * @param tree through which they are drawn instead
     */
    Trial(TrialLoads loads, Scatter scatter, Overlap overlap, double[] perAmp, TreeDips tree) {
        this.tree = tree;
        this.treePercent = new double[tree.nodes.length];
        this.perSourceAmp = perAmp[0];
        this.perFeederAmp = perAmp;
        this.dips = new double[loads.nodes.size()];
        this.loads = loads;
        this.scatter = scatter;
        this.overlap = overlap;
        this.closesSeconds = new double[loads.count()];
        this.sines = new double[loads.count()];
        this.leftAmps = new double[loads.count()];
        this.order = new int[loads.count()];
        this.active = new int[loads.count()];
        this.steadyAmps = new double[loads.standingAmps.length];
        this.sums = new double[loads.standingAmps.length];
        this.starting = new double[loads.begins.length - 1][loads.standingAmps.length];
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
        Arrays.fill(peaks, 0);
        Arrays.fill(dips, 0);
        for (int command = 0; command < starting.length; command++) {
            sort(loads.begins[command], loads.begins[command + 1]);
            for (int place = 0; place < steadyAmps.length; place++) {
                steadyAmps[place] = loads.hasClocks ? 0 : steady * loads.standingAmps[place];
            }
            System.arraycopy(steadyAmps, 0, starting[command], 0, steadyAmps.length);
            Arrays.fill(sums, 0);
            sweep(loads.begins[command], loads.begins[command + 1], starting[command]);
        }
        for (int place = 0; place < steadyAmps.length; place++) {
            int node = place / TrialLoads.PHASES;
            peaks[node] = Math.max(peaks[node], loads.hasClocks ? together(place) : starting[0][place]);
        }
    }

    /**
     * What commands make of a place between them: one starts while the others are in use, or each at its worst at once.
     */
    private double together(int place) {
        double amps = steady * loads.standingAmps[place];
        double most = 0;
        for (int command = 0; command < starting.length; command++) {
            double used = steady * loads.usedAmps[command][place];
            double gain = Math.max(0, starting[command][place] - used);
            amps += overlap == Overlap.ANY ? used + gain : used;
            most = Math.max(most, gain);
        }
        return overlap == Overlap.ANY ? amps : amps + most;
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
            if (loads.drawsAngle[i]) {
                sines[i] = Math.sin(Math.PI * random.nextDouble());
            }
            int with = loads.closesWith[i];
            closesSeconds[i] = closesSeconds[with];
            double angle = loads.hasAngle[i] ? sines[with] : 1;
            // The crest as a whole is scaled, the base below it is not.
            double within = loads.withinPeakAmps[i];
            leftAmps[i] = voltage * Math.max(0, inrush * angle * (loads.excessAmps[i] + within) - within);
            order[i] = i;
        }
    }

    /** Closing times are nearly in nominal order, for which insertion is linear. */
    private void sort(int from, int to) {
        for (int i = from + 1; i < to; i++) {
            int moving = order[i];
            int at = i;
            while (at > from && closesSeconds[order[at - 1]] > closesSeconds[moving]) {
                order[at] = order[at - 1];
                at--;
            }
            order[at] = moving;
        }
    }

    private void sweep(int from, int to, double[] most) {
        int actives = 0;
        for (int step = from; step < to; step++) {
            int closing = order[step];
            int[] places = loads.places[closing];
            double[] parts = loads.parts[closing];
            for (int k = 0; k < places.length; k++) {
                steadyAmps[places[k]] += steady * parts[k] * loads.baseAmps[closing];
                sums[places[k]] = 0;
            }
            active[actives++] = closing;
            actives = add(closing, actives);
            for (int place : places) {
                most[place] = Math.max(most[place], steadyAmps[place] + sums[place]);
            }
        }
    }

    /** Adds up what is left of every excess right as a load closes, and the dips of it; drops what has died down. */
    private int add(int closing, int actives) {
        double now = closesSeconds[closing];
        double[] dipSource = new double[TrialLoads.PHASES];
        double[] dipFeeder = new double[TrialLoads.PHASES];
        for (int voltage : tree.felt[closing]) {
            treePercent[voltage] = 0;
        }
        int kept = 0;
        for (int k = 0; k < actives; k++) {
            int load = active[k];
            double halvings = (now - closesSeconds[load]) / loads.halfSeconds[load];
            double amps = leftAmps[load] * Math.exp(-LN2 * halvings);
            if (amps < NEGLIGIBLE_AMPS && halvings > 0) {
                continue;
            }
            active[kept++] = load;
            int[] places = loads.places[load];
            double[] parts = loads.parts[load];
            for (int i = 0; i < places.length; i++) {
                sums[places[i]] += parts[i] * amps;
            }
            if (perSourceAmp > 0) {
                addToDips(load, closing, amps, dipSource, dipFeeder);
            }
            addThroughTree(load, closing, amps);
        }
        for (int voltage : tree.felt[closing]) {
            int node = tree.nodes[voltage];
            dips[node] = Math.max(dips[node], StepDip.mostPercent(treePercent[voltage]));
        }
        int here = loads.panel[closing];
        for (int phase = 0; phase < TrialLoads.PHASES && perSourceAmp > 0; phase++) {
            double source = perSourceAmp * dipSource[phase];
            double feeder = perFeederAmp[here] * dipFeeder[phase];
            dips[0] = Math.max(dips[0], StepDip.mostPercent(source));
            dips[here] = Math.max(dips[here], StepDip.mostPercent(source + feeder));
        }
        return kept;
    }

    /** The rms of what is left of an excess, and of the idle current that comes with what closes right now. */
    private double rms(int load, int closing, double leftAmps) {
        double idle = closesSeconds[load] == closesSeconds[closing] ? steady * loads.idleAmps[load] : 0;
        return leftAmps * loads.halfCycleRatio[load] + idle;
    }

    private void addThroughTree(int load, int closing, double leftAmps) {
        double rms = rms(load, closing, leftAmps);
        double[] percentPerAmp = tree.percentPerAmp[load];
        for (int voltage : tree.felt[closing]) {
            treePercent[voltage] += rms * percentPerAmp[voltage];
        }
    }

    private void addToDips(int load, int closing, double leftAmps, double[] source, double[] feeder) {
        double rms = rms(load, closing, leftAmps);
        for (int phase = 0; phase < TrialLoads.PHASES; phase++) {
            if ((loads.phases[load] & 1 << phase) != 0) {
                source[phase] += rms;
                feeder[phase] += loads.panel[load] == loads.panel[closing] ? loads.ways[load] * rms : 0;
            }
        }
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
