package evenrise.model.observation;

import evenrise.model.project.Phase;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.Map;

/**
 * Steps of several phases at one moment: something came on or went off.
 *
 * @param seconds by the logger's clock
 * @param steps by phase, where there is a sure one
 * @param others of phases without a sure step, what is seen there then
 */
public record RecordedStart(double seconds, Map<Phase, Change> steps, Map<Phase, Change> others) {
    private static final Change NOTHING = new Change(0, Double.POSITIVE_INFINITY, 0, Double.POSITIVE_INFINITY, 0, 0);

    /**
     * One phase's part.
     *
     * @param amps how much more flows once the surge is over
     * @param sigmaAmps standard deviation of that
     * @param jumpAmps how much more flows at once, with the surge
     * @param jumpSigmaAmps standard deviation of that
     * @param halfSeconds in which the surge halves; 0 without one
     * @param seenSeconds how long after the step was looked at
     */
    public record Change(
            double amps,
            double sigmaAmps,
            double jumpAmps,
            double jumpSigmaAmps,
            double halfSeconds,
            double seenSeconds) {
        static Change of(StepFit fit) {
            return new Change(
                    fit.amps(),
                    fit.sigmaAmps(),
                    fit.jumpAmps(),
                    fit.jumpSigmaAmps(),
                    fit.halfSeconds(),
                    fit.seenSeconds());
        }

        private Change times(double by) {
            return new Change(amps * by, sigmaAmps * by, jumpAmps * by, jumpSigmaAmps * by, halfSeconds, seenSeconds);
        }

        /** Whether what flows in the end is known about as well as the jump. */
        boolean isSettled() {
            return sigmaAmps <= 0.25 * Math.abs(amps);
        }
    }

    /** What the channel of the phase {@code order[phase]} shows taken for what flows in {@code phase}. */
    RecordedStart ordered(int[] order) {
        return new RecordedStart(seconds, ordered(steps, order), ordered(others, order));
    }

    private static Map<Phase, Change> ordered(Map<Phase, Change> changes, int[] order) {
        Map<Phase, Change> ordered = new EnumMap<>(Phase.class);
        for (Phase phase : Phase.values()) {
            Change change = changes.get(Phase.values()[order[phase.ordinal()]]);
            if (change != null) {
                ordered.put(phase, change);
            }
        }
        return ordered;
    }

    /** With readings of a phase multiplied. */
    RecordedStart scaled(Map<Phase, Double> scales) {
        return new RecordedStart(seconds, scaled(steps, scales), scaled(others, scales));
    }

    private static Map<Phase, Change> scaled(Map<Phase, Change> changes, Map<Phase, Double> scales) {
        Map<Phase, Change> scaled = new EnumMap<>(Phase.class);
        changes.forEach((phase, each) -> scaled.put(phase, each.times(scales.getOrDefault(phase, 1.0))));
        return scaled;
    }

    /** The same with a step on the phase where it is clearest, where there is none yet. */
    RecordedStart clearest() {
        Map<Phase, Change> clear = new EnumMap<>(steps);
        others.entrySet().stream()
                .max(Comparator.comparingDouble(each ->
                        Math.abs(each.getValue().jumpAmps()) / each.getValue().jumpSigmaAmps()))
                .filter(each -> clear.isEmpty())
                .ifPresent(each -> clear.put(each.getKey(), each.getValue()));
        return new RecordedStart(seconds, clear, others);
    }

    /** What is seen on a phase, be it a sure step or not. */
    Change on(Phase phase) {
        Change step = steps.get(phase);
        return step != null ? step : others.getOrDefault(phase, NOTHING);
    }
}
