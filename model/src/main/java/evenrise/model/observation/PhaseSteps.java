package evenrise.model.observation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Steps of one phase's current: of all joints of its curves those that are left when each that is no sure jump has gone. */
final class PhaseSteps {
    /** Inrush is over by then: ten half-lives of the longest that are usual, 60 ms (common practice, no source). */
    static final double SURGE_SECONDS = 0.6;

    /** Steps that are so few samples apart are one. */
    private static final int ONE_STEP = 2;

    /** Of so few samples since the step before the level says more than a curve. */
    private static final int FEW = 4;

    private final double[] seconds;
    private final double[] amps;
    private final double sigmaAmps;
    private final List<Integer> at;
    private final List<StepFit> fits = new ArrayList<>();

    private PhaseSteps(double[] seconds, double[] amps) {
        this.seconds = seconds;
        this.amps = amps;
        this.sigmaAmps = Noise.sigmaAmps(amps);
        this.at = apart(Curves.joints(seconds, amps, sigmaAmps));
    }

    /** Without those that are one step with the one before. */
    private static List<Integer> apart(List<Integer> joints) {
        List<Integer> apart = new ArrayList<>();
        for (int each : joints) {
            if (apart.isEmpty() || each - apart.get(apart.size() - 1) > ONE_STEP) {
                apart.add(each);
            }
        }
        return apart;
    }

    /** @param deviations a jump is sure that exceeds so many of its standard deviations */
    static PhaseSteps of(double[] seconds, double[] amps, double deviations) {
        PhaseSteps steps = new PhaseSteps(seconds, amps);
        for (int i = 0; i < steps.at.size(); i++) {
            steps.fits.add(steps.fit(i));
        }
        int before;
        do {
            before = steps.at.size();
            steps.dropSurges();
            while (steps.dropLeast(deviations)) {}
        } while (steps.at.size() < before);
        return steps;
    }

    /** A rise that falls again at once is one step with a surge. */
    private void dropSurges() {
        for (int i = 1; i < at.size(); ) {
            int since = at.get(i) - at.get(i - 1);
            boolean falls = (since <= FEW
                            ? greatest(at.get(i - 1), at.get(i)) > greatest(at.get(i), at.get(i) + FEW)
                            : fits.get(i).isSureFall())
                    && amps[at.get(i - 1) + 1] > amps[at.get(i - 1) - 1]
                    && seconds[at.get(i)] - seconds[at.get(i - 1)] <= SURGE_SECONDS;
            if (falls) {
                drop(i);
            } else {
                i++;
            }
        }
    }

    private double greatest(int from, int to) {
        return Arrays.stream(amps, from, Math.min(to, amps.length)).max().orElseThrow();
    }

    private boolean dropLeast(double deviations) {
        int least = -1;
        for (int i = 0; i < fits.size(); i++) {
            if (fits.get(i).deviations()
                    < (least < 0 ? deviations : fits.get(least).deviations())) {
                least = i;
            }
        }
        if (least < 0) {
            return false;
        }
        drop(least);
        return true;
    }

    private void drop(int step) {
        at.remove(step);
        fits.remove(step);
        for (int i = Math.max(0, step - 1); i <= step && i < at.size(); i++) {
            fits.set(i, fit(i));
        }
    }

    private StepFit fit(int i) {
        int from = i == 0 ? 0 : afterSurge(i - 1, at.get(i));
        int to = i == at.size() - 1 ? amps.length : at.get(i + 1);
        return StepFit.of(seconds, amps, sigmaAmps, at.get(i), from, to);
    }

    /** The first sample after a step that its surge no longer lifts, but a few before the next step in any case. */
    private int afterSurge(int step, int next) {
        int first = at.get(step) + 1;
        StepFit fit = fits.get(step);
        double over = seconds[at.get(step)] + fit.halvesTo(sigmaAmps) * fit.halfSeconds();
        int sample = first + ONE_STEP;
        while (sample < next && seconds[sample] < over) {
            sample++;
        }
        return Math.max(first, Math.min(sample, next - FEW));
    }

    int size() {
        return at.size();
    }

    /** The sample within which a step came. */
    int sample(int step) {
        return at.get(step);
    }

    StepFit step(int step) {
        return fits.get(step);
    }

    /** What is seen at a sample, whether it is a step or not, between the steps beside it. */
    StepFit at(int sample) {
        int from = 0;
        int to = amps.length;
        for (int i = 0; i < at.size(); i++) {
            int step = at.get(i);
            if (Math.abs(step - sample) <= 1) {
                return fits.get(i);
            }
            if (step < sample) {
                from = step + 1;
            } else {
                to = Math.min(to, step);
            }
        }
        return StepFit.of(seconds, amps, sigmaAmps, sample, from, to);
    }
}
