package evenrise.solver.observation;

import evenrise.model.observation.Recording;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLoads;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;

/**
 * A start as a logger would record it, by physics of its own: phasors at each load's own angle, inrush that decays, gear
 * that is not quite what its plate says, noise, a clamp that rounds, and a clock that is off.
 */
final class SimulatedStart {
    /** Seconds that are recorded before the command and after the last start. */
    private static final double AROUND = 3;

    /** Whether surges are other than stated: a third of it to a fifth more, with half-lives that spread by a fifth. */
    private static final boolean HAS_OTHER_SURGES = Boolean.getBoolean("evenrise.observed.surges");

    /**
     * Whether surges decay as no exponential does, each load's in one of three ways: with a long tail, as of a transformer
     * that saturates; from a shoulder, as of a motor that runs up; and fast, then slowly, as of two parts in one case.
     */
    private static final boolean HAS_OTHER_SHAPES = Boolean.getBoolean("evenrise.observed.shapes");

    /** Of a shoulder, in half-lives. */
    private static final double STEEP = 3;

    /** A surge that has halved so often is nothing that a clamp could show. */
    private static final double OVER = 60;

    private final Random chance;
    private final List<Gear> gear = new ArrayList<>();
    private double[] scale = {1, 1, 1};
    private int[] channels = {0, 1, 2};
    private double last;

    /** What really comes on: when, and as which current on which phase. */
    private static final class Gear {
        final String load;
        double on;
        final boolean isRunning;
        boolean isDead;
        final double[] amps;
        final double[] radians;
        final double surge;
        final double halfSeconds;
        final int shape;

        Gear(
                String load,
                double on,
                boolean isRunning,
                double[] amps,
                double[] radians,
                double surge,
                double half,
                int shape) {
            this.load = load;
            this.on = on;
            this.isRunning = isRunning;
            this.amps = amps;
            this.radians = radians;
            this.surge = surge;
            this.halfSeconds = half;
            this.shape = shape;
        }

        /** Halved when its half-life is over, or nearly so, whatever its shape. */
        double surge(double since) {
            double halves = since / halfSeconds;
            if (isRunning || shape != 1 && halves > OVER) {
                return 0;
            }
            return surge
                    * switch (shape) {
                        case 1 -> Math.pow(1 + (Math.sqrt(2) - 1) * halves, -2);
                        case 2 -> (1 + Math.exp(-STEEP)) / (1 + Math.exp(STEEP * (halves - 1)));
                        case 3 -> 0.7 * Math.pow(2, -1.4 * halves) + 0.3 * Math.pow(2, -0.35 * halves);
                        default -> Math.pow(2, -halves);
                    };
        }
    }

    /** @param spread standard deviation of what gear draws, as a part of what is stated */
    SimulatedStart(Layout layout, int point, double spread, Random chance) {
        this(layout, point, spread, chance, HAS_OTHER_SHAPES);
    }

    /** @param hasOtherShapes whether surges decay as no exponential does */
    SimulatedStart(Layout layout, int point, double spread, Random chance, boolean hasOtherShapes) {
        this.chance = chance;
        for (NodeLoads.Seen seen : layout.nodeLoads().seen(point)) {
            double factor = Math.max(0.5, 1 + spread * chance.nextGaussian());
            double angle = Math.acos(0.9 + 0.1 * chance.nextDouble());
            double[] amps = new double[3];
            double[] radians = new double[3];
            int pole = 0;
            List<Phase> phases = seen.placement().phases();
            for (Phase phase : phases) {
                amps[phase.ordinal()] = seen.placement().load().idleAmps() * factor;
                // Between two lines a current leads the earlier voltage to neutral by 30 degrees and lags the later.
                Phase other = phases.get(phases.size() - 1 - pole);
                boolean isEarlier = other.ordinal() == (phase.ordinal() + 1) % 3;
                radians[phase.ordinal()] = angle + (phases.size() == 2 ? (isEarlier ? -1 : 1) * Math.PI / 6 : 0);
                pole++;
            }
            boolean isSequenced = seen.placement().isSequenced();
            double on = seen.placement().onSeconds().orElse(Double.NEGATIVE_INFINITY);
            double ofSurge = HAS_OTHER_SURGES ? 0.3 + 0.9 * chance.nextDouble() : 1;
            double ofHalf = HAS_OTHER_SURGES ? Math.exp(0.2 * chance.nextGaussian()) : 1;
            int shape = hasOtherShapes ? 1 + chance.nextInt(3) : 0;
            double surge = ofSurge * seen.placement().load().inrushPeakAmps().orElse(0) / Math.sqrt(2);
            gear.add(new Gear(
                    seen.placement().id(),
                    on,
                    !isSequenced,
                    amps,
                    radians,
                    Math.max(0, surge - seen.placement().load().idleAmps()),
                    ofHalf * seen.placement().load().inrushHalfMillis() / 1000,
                    shape));
            last = Math.max(last, isSequenced ? on : 0);
        }
    }

    private Gear of(String load) {
        return gear.stream().filter(each -> each.load.equals(load)).findFirst().orElseThrow();
    }

    void kill(String load) {
        of(load).isDead = true;
    }

    /** Something that no plan knows, on one phase. */
    void add(Phase phase, double amps, double on) {
        double[] all = new double[3];
        all[phase.ordinal()] = amps;
        gear.add(new Gear("", on, false, all, new double[] {0.3, 0.3, 0.3}, 0, 1, 0));
    }

    /** Something else hangs on it: another current, with the same surge. */
    void resize(String load, double by) {
        Gear each = of(load);
        for (int phase = 0; phase < each.amps.length; phase++) {
            each.amps[phase] *= by;
        }
    }

    void late(String load, double seconds) {
        of(load).on += seconds;
    }

    void swap(String one, String other) {
        double on = of(one).on;
        of(one).on = of(other).on;
        of(other).on = on;
    }

    /** Turned on by one phase. */
    void turn(String load) {
        Gear each = of(load);
        double amps = each.amps[2];
        double radians = each.radians[2];
        for (int phase = 2; phase > 0; phase--) {
            each.amps[phase] = each.amps[phase - 1];
            each.radians[phase] = each.radians[phase - 1];
        }
        each.amps[0] = amps;
        each.radians[0] = radians;
    }

    void shift(Set<String> loads, java.util.function.ToDoubleFunction<String> onSeconds) {
        new HashSet<>(loads).forEach(load -> of(load).on = onSeconds.applyAsDouble(load));
        last = gear.stream()
                .filter(each -> !each.isRunning)
                .mapToDouble(each -> each.on)
                .max()
                .orElse(0);
    }

    void swapClamps(int one, int other) {
        int before = channels[one];
        channels[one] = channels[other];
        channels[other] = before;
    }

    void scale(int phase, double by) {
        scale[phase] = by;
    }

    /**
     * @param offset what the logger shows at the command
     * @param rate how fast its clock runs
     */
    Recording recorded(double interval, double sigma, double offset, double rate) {
        int samples = (int) Math.ceil((last + 2 * AROUND) / interval);
        double[] seconds = new double[samples];
        double[][] amps = new double[3][samples];
        double[][] cosines = new double[gear.size()][];
        double[][] sines = new double[gear.size()][];
        for (int k = 0; k < cosines.length; k++) {
            cosines[k] = Arrays.stream(gear.get(k).radians).map(Math::cos).toArray();
            sines[k] = Arrays.stream(gear.get(k).radians).map(Math::sin).toArray();
        }
        for (int i = 0; i < samples; i++) {
            double at = -AROUND + i * interval + 0.2 * interval * chance.nextDouble();
            seconds[i] = offset + rate * at;
            for (int phase = 0; phase < 3; phase++) {
                double read = rms(phase, at, interval, cosines, sines) * scale[phase] + sigma * chance.nextGaussian();
                amps[phase][i] = Math.max(0, Math.round(read * 100) / 100.0);
            }
        }
        Map<Phase, double[]> byPhase = new EnumMap<>(Phase.class);
        for (Phase phase : Phase.values()) {
            byPhase.put(phase, amps[channels[phase.ordinal()]]);
        }
        return new Recording(seconds, byPhase);
    }

    /** The mean over the interval before. */
    private double rms(int phase, double at, double interval, double[][] cosines, double[][] sines) {
        int parts = 5;
        double sum = 0;
        for (int i = 0; i < parts; i++) {
            double moment = at - interval * i / parts;
            double real = 0;
            double imaginary = 0;
            for (int k = 0; k < cosines.length; k++) {
                Gear each = gear.get(k);
                if (!each.isDead && (each.isRunning || moment >= each.on) && each.amps[phase] > 0) {
                    double current = each.amps[phase] + each.surge(moment - each.on);
                    real += current * cosines[k][phase];
                    imaginary += current * sines[k][phase];
                }
            }
            sum += real * real + imaginary * imaginary;
        }
        return Math.sqrt(sum / parts);
    }
}
