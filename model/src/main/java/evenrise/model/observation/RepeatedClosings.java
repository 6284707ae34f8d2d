package evenrise.model.observation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What several recorded starts of one plan say together of when loads close. A load that is late by as much each time is
 * set otherwise; what differs from one start to the next is scatter. So lateness is taken for a part of the load, a part of
 * the start (how well its clock was set), and a rest, by least squares; the rest's deviation is that of one closing.
 *
 * @param starts that were recorded
 * @param loads that came on alone, as planned, in two of them and more
 * @param degrees of freedom of the rest
 * @param deviationSeconds of one closing of a load from its own mean, sampling and all; empty without a degree of freedom
 * @param fit of all closings about the plan, whichever the load
 */
public record RepeatedClosings(
        int starts, int loads, int degrees, OptionalDouble deviationSeconds, Optional<ClosingFit> fit) {
    private static final int ROUNDS = 200;

    /** @param seen of the same start, two and more */
    public static RepeatedClosings of(List<Observation> seen) {
        // Of recordings that are not as fine the finest counts: what sampling explains is taken off, so that errs high.
        double interval =
                seen.stream().mapToDouble(Observation::intervalSeconds).min().orElseThrow();
        return of(seen.stream().map(ClosingFit::lateSeconds).toList(), interval);
    }

    /** @param late by start, how much later than planned each load closed */
    static RepeatedClosings of(List<Map<String, Double>> late, double intervalSeconds) {
        Map<String, Integer> times = new LinkedHashMap<>();
        late.forEach(start -> start.keySet().forEach(load -> times.merge(load, 1, Integer::sum)));
        times.values().removeIf(count -> count < 2);
        double[] ofStart = new double[late.size()];
        Map<String, Double> ofLoad = new HashMap<>();
        for (int round = 0; round < ROUNDS; round++) {
            for (String load : times.keySet()) {
                double sum = 0;
                for (int i = 0; i < late.size(); i++) {
                    Double own = late.get(i).get(load);
                    sum += own == null ? 0 : own - ofStart[i];
                }
                ofLoad.put(load, sum / times.get(load));
            }
            for (int i = 0; i < late.size(); i++) {
                Map<String, Double> start = late.get(i);
                ofStart[i] = start.entrySet().stream()
                        .filter(each -> times.containsKey(each.getKey()))
                        .mapToDouble(each -> each.getValue() - ofLoad.get(each.getKey()))
                        .average()
                        .orElse(0);
            }
        }
        double squares = 0;
        int closings = 0;
        int startsUsed = 0;
        for (int i = 0; i < late.size(); i++) {
            boolean isUsed = false;
            for (String load : times.keySet()) {
                Double own = late.get(i).get(load);
                if (own != null) {
                    double rest = own - ofLoad.get(load) - ofStart[i];
                    squares += rest * rest;
                    closings++;
                    isUsed = true;
                }
            }
            startsUsed += isUsed ? 1 : 0;
        }
        int degrees = Math.max(0, closings - times.size() - Math.max(0, startsUsed - 1));
        return new RepeatedClosings(
                late.size(),
                times.size(),
                degrees,
                degrees > 0 ? OptionalDouble.of(Math.sqrt(squares / degrees)) : OptionalDouble.empty(),
                ClosingFit.of(aboutThePlan(late), intervalSeconds));
    }

    /** Each start's about its own middle, since a clock is set by its start alone. */
    private static double[] aboutThePlan(List<Map<String, Double>> late) {
        List<Double> all = new ArrayList<>();
        for (Map<String, Double> start : late) {
            double[] sorted = start.values().stream()
                    .mapToDouble(Double::doubleValue)
                    .sorted()
                    .toArray();
            if (sorted.length > 0) {
                double middle = (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
                start.values().forEach(each -> all.add(each - middle));
            }
        }
        return all.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
