package evenrise.solver.recording;

import evenrise.model.observation.Recording;
import evenrise.model.project.Phase;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;

/**
 * Rms currents out of samples, in memory that does not grow with their number: waveforms become one value a period, and what
 * is still too long is thinned by two again and again, a pair becoming its root of the mean square.
 */
final class RmsSeries implements SampleSink {
    /** Samples closer than this are those of a wave, and not rms values. */
    private static final double WAVE_SECONDS = 1.0 / 400;

    private static final int FIRST = 64;

    private final Phase[] phases;
    private final double periodSeconds;
    private final double fromSeconds;
    private final double toSeconds;
    private final int most;
    private final double[][] first;
    private int firsts;
    private boolean isWave;
    private double windowEnds = Double.NEGATIVE_INFINITY;
    private final double[] squares;
    private int inWindow;
    private double lastSeconds = Double.NaN;
    private double[] seconds;
    private final double[][] amps;
    private int count;
    private int thinned = 1;
    private final double[] pending;
    private double pendingSeconds;
    private int pendings;

    /**
     * @param periodSeconds of the supply
     * @param fromSeconds what is before is left out, by the recorder's clock
     * @param most samples that are kept
     */
    RmsSeries(Phase[] phases, double periodSeconds, double fromSeconds, double toSeconds, int most) {
        this.phases = phases.clone();
        this.periodSeconds = periodSeconds;
        this.fromSeconds = fromSeconds;
        this.toSeconds = toSeconds;
        this.most = most;
        this.first = new double[FIRST][];
        this.squares = new double[phases.length];
        this.pending = new double[phases.length];
        this.seconds = new double[1024];
        this.amps = new double[phases.length][1024];
    }

    @Override
    public void add(double moment, double[] values) {
        if (moment < fromSeconds || moment > toSeconds) {
            return;
        }
        if (firsts < FIRST) {
            double[] kept = Arrays.copyOf(values, values.length + 1);
            kept[values.length] = moment;
            first[firsts++] = kept;
            if (firsts == FIRST) {
                begin();
            }
            return;
        }
        sample(moment, values);
    }

    /** Tells waves from rms values by how close the first samples are. */
    private void begin() {
        double[] apart = new double[Math.max(0, firsts - 1)];
        for (int i = 0; i < apart.length; i++) {
            apart[i] = first[i + 1][phases.length] - first[i][phases.length];
        }
        Arrays.sort(apart);
        isWave = apart.length > 0 && apart[apart.length / 2] < WAVE_SECONDS;
        for (int i = 0; i < firsts; i++) {
            sample(first[i][phases.length], first[i]);
        }
    }

    private void sample(double moment, double[] values) {
        if (!isWave) {
            emit(moment, values);
            return;
        }
        if (windowEnds == Double.NEGATIVE_INFINITY) {
            windowEnds = moment + periodSeconds;
        }
        if (moment >= windowEnds) {
            close();
            windowEnds += periodSeconds * Math.max(1, Math.ceil((moment - windowEnds) / periodSeconds + 1e-9));
        }
        for (int i = 0; i < squares.length; i++) {
            squares[i] += values[i] * values[i];
        }
        inWindow++;
        lastSeconds = moment;
    }

    private void close() {
        if (inWindow > 0) {
            double[] rms = new double[squares.length];
            for (int i = 0; i < rms.length; i++) {
                rms[i] = Math.sqrt(squares[i] / inWindow);
            }
            emit(lastSeconds, rms);
        }
        Arrays.fill(squares, 0);
        inWindow = 0;
    }

    private void emit(double moment, double[] values) {
        if (thinned == 1) {
            store(moment, values);
            return;
        }
        for (int i = 0; i < pending.length; i++) {
            pending[i] += values[i] * values[i];
        }
        pendingSeconds += moment;
        if (++pendings == thinned) {
            double[] rms = new double[pending.length];
            for (int i = 0; i < rms.length; i++) {
                rms[i] = Math.sqrt(pending[i] / thinned);
            }
            store(pendingSeconds / thinned, rms);
            Arrays.fill(pending, 0);
            pendingSeconds = 0;
            pendings = 0;
        }
    }

    private void store(double moment, double[] values) {
        if (count == seconds.length) {
            grow();
        }
        seconds[count] = moment;
        for (int i = 0; i < amps.length; i++) {
            amps[i][count] = values[i];
        }
        count++;
        if (count == most) {
            halve();
        }
    }

    private void grow() {
        int length = Math.min(most, 2 * seconds.length);
        seconds = Arrays.copyOf(seconds, length);
        for (int i = 0; i < amps.length; i++) {
            amps[i] = Arrays.copyOf(amps[i], length);
        }
    }

    private void halve() {
        int half = count / 2;
        for (int k = 0; k < half; k++) {
            seconds[k] = (seconds[2 * k] + seconds[2 * k + 1]) / 2;
            for (double[] each : amps) {
                each[k] = Math.sqrt((each[2 * k] * each[2 * k] + each[2 * k + 1] * each[2 * k + 1]) / 2);
            }
        }
        count = half;
        thinned *= 2;
    }

    /** How many values became one; 1 where all were kept. */
    int thinned() {
        return thinned;
    }

    boolean isWave() {
        return isWave;
    }

    /** @throws IllegalArgumentException where this is no recording */
    Recording recording() {
        if (firsts < FIRST) {
            begin();
        }
        close();
        Map<Phase, double[]> byPhase = new EnumMap<>(Phase.class);
        for (int i = 0; i < phases.length; i++) {
            byPhase.put(phases[i], Arrays.copyOf(amps[i], count));
        }
        return new Recording(Arrays.copyOf(seconds, count), byPhase);
    }
}
