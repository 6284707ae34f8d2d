package evenrise.solver.bounds;

import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.ProjectIndex;
import evenrise.model.rules.SceneCurrents;
import evenrise.solver.bounds.Seats.Seat;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What the peak of a source stays below in no plan, by two short arguments that hold for any distribution and any systems.
 * What comes on together at one contactor has a phase that bears the most of it, however it sits. And where systems start
 * by commands of their own, the worst phase bears at least the mean of what all that it surely feeds draws in use.
 */
final class SourcePeaks {
    /** So many ways to sit of what comes on together are looked at one by one. */
    private static final long MOST_WAYS = 20_000;

    private final Project project;
    private final Seats seats;
    private final SceneCurrents scenes;

    SourcePeaks(Project project, Seats seats) {
        this.project = project;
        this.seats = seats;
        this.scenes = SceneCurrents.of(new ProjectIndex(project));
    }

    /** Of all sources together, each at its own worst time. */
    double sumAmps() {
        return seats.distribution().points().stream()
                .filter(point -> point.index() == 0 || point.isFurtherSource())
                .mapToDouble(point -> amps(point.index()))
                .sum();
    }

    /** Of one source, by its place among the distribution's points. */
    double amps(int source) {
        return Math.max(byContactors(source), byMean(source));
    }

    private double byContactors(int source) {
        return together().values().stream()
                .map(loads -> loads.stream()
                        .filter(load -> seats.isCertainAt(load, source))
                        .toList())
                .filter(loads -> !loads.isEmpty())
                .mapToDouble(loads -> least(loads, source))
                .max()
                .orElse(0);
    }

    /** What the peak of a source stays below in no plan that has an output's loads below it, by the load that leads them. */
    Map<String, Double> alone(int source) {
        Map<String, Double> alone = new LinkedHashMap<>();
        together().forEach((lead, loads) -> {
            double amps = least(loads, source);
            if (Double.isFinite(amps)) {
                alone.put(lead, amps);
            }
        });
        return alone;
    }

    private Map<String, List<Load>> together() {
        Map<String, List<Load>> together = new LinkedHashMap<>();
        project.loads().stream()
                .filter(Load::switched)
                .forEach(load -> together.computeIfAbsent(load.comesWith().orElse(load.id()), any -> new ArrayList<>())
                        .add(load));
        return together;
    }

    /**
     * The least peak of loads that come on together, over every way to sit in one panel below a source; of many ways that of
     * the largest alone. Infinite where there is no way.
     */
    private double least(List<Load> loads, int source) {
        long ways = loads.stream()
                .mapToLong(load -> seats.of(load).size())
                .reduce(1, (a, b) -> Math.min(MOST_WAYS + 1, a * b));
        if (ways > MOST_WAYS) {
            return loads.stream()
                    .mapToDouble(load -> least(List.of(load), 0, source, new double[Phase.values().length], -1))
                    .max()
                    .orElse(0);
        }
        return least(loads, 0, source, new double[Phase.values().length], -1);
    }

    private double least(List<Load> loads, int next, int source, double[] sums, int panel) {
        if (next == loads.size()) {
            return Math.max(sums[0], Math.max(sums[1], sums[2]));
        }
        Load load = loads.get(next);
        InrushEnvelope envelope = InrushEnvelope.of(load, 0);
        double amps = envelope.baseAmps() + envelope.excessAmps();
        double least = Double.POSITIVE_INFINITY;
        for (Seat seat : seats.of(load)) {
            if ((panel < 0 || seat.panel() == panel) && seat.parts().containsKey(source)) {
                double[] more = sums.clone();
                for (Phase phase : Phase.values()) {
                    more[phase.ordinal()] += seat.part(source, phase) * amps;
                }
                least = Math.min(least, least(loads, next + 1, source, more, seat.panel()));
            }
        }
        return least;
    }

    /** With one clock bases alone are sure to be on together; with several, what is in use. */
    private double byMean(int source) {
        Point point = seats.distribution().points().get(source);
        double sum = 0;
        for (Load load : project.loads()) {
            if (seats.isCertainAt(load, source)) {
                double amps = project.hasClocks()
                        ? Math.sqrt(2) * Math.max(load.idleAmps(), scenes.mostAmps(load))
                        : InrushEnvelope.of(load, 0).baseAmps();
                sum += amps * leastTotal(load, source);
            }
        }
        return sum / point.system().phases().size();
    }

    private double leastTotal(Load load, int source) {
        return seats.of(load).stream()
                .mapToDouble(seat -> {
                    double total = 0;
                    for (Phase phase : Phase.values()) {
                        total += seat.part(source, phase);
                    }
                    return total;
                })
                .min()
                .orElse(0);
    }
}
