package evenrise.model.observation;

import evenrise.model.project.Phase;
import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * Peaks of several closings of one load on one phase. A peak depends on the moment of closing, so a few closings say little
 * of the worst.
 *
 * @param closings whose wave shows it
 * @param leastAmps instantaneous
 * @param greatestAmps instantaneous
 * @param nextAmps what one more closing stays below with 95 %, were they normal; empty below three closings
 * @param statedAmps in the project; empty where it states none
 */
public record RepeatedPeak(
        String load,
        Phase phase,
        int closings,
        double leastAmps,
        double greatestAmps,
        OptionalDouble nextAmps,
        OptionalDouble statedAmps) {
    /** @param peaks one and more */
    public static RepeatedPeak of(String load, Phase phase, double[] peaks, OptionalDouble statedAmps) {
        return new RepeatedPeak(
                load,
                phase,
                peaks.length,
                Arrays.stream(peaks).min().orElseThrow(),
                Arrays.stream(peaks).max().orElseThrow(),
                peaks.length < OneMore.FEWEST ? OptionalDouble.empty() : OptionalDouble.of(OneMore.staysBelow(peaks)),
                statedAmps);
    }

    /** Whether one of them was above what is stated. */
    public boolean isOver() {
        return statedAmps.isPresent() && greatestAmps > statedAmps.getAsDouble();
    }

    /** Whether another closing may be, by what these were. */
    public boolean mayBeOver() {
        return isOver() || statedAmps.isPresent() && nextAmps.orElse(0) > statedAmps.getAsDouble();
    }
}
