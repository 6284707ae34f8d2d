package evenrise.solver.bounds;

import evenrise.solver.bounds.PlantLoads.Closed;
import evenrise.solver.bounds.PlantLoads.Part;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Outputs of one command with the same window, half-life, sources, and nearly the same ratios of excess and use to base,
 * taken together. Only weights are sought on clusters; what they prove is worked out output by output.
 */
final class PlantCluster {
    private static final double RATIOS_AN_OCTAVE = 2;

    private final int clock;
    private final int first;
    private final int last;

    /** By source; null where it cannot be there. */
    private final Part[][] parts;

    /** One part for each half-life: those of all outputs, summed. */
    private PlantCluster(int clock, int first, int last, Part[][] parts) {
        this.clock = clock;
        this.first = first;
        this.last = last;
        this.parts = parts;
    }

    /** Where a cluster goes and what it costs there. */
    record Place(int source, int instant, double amps) {}

    /** Time: loads × sources. */
    static List<PlantCluster> of(PlantLoads plant, PlantWindows windows) {
        Map<List<Object>, PlantCluster> found = new LinkedHashMap<>();
        for (int i = 0; i < plant.closed.size(); i++) {
            Closed closed = plant.closed.get(i);
            boolean isAlone = closed.parts().size() == 1;
            List<Object> key = isAlone
                    ? List.of(
                            closed.clock(),
                            windows.first[i],
                            windows.last[i],
                            kind(closed.parts().get(0)))
                    : List.of(i);
            PlantCluster made =
                    new PlantCluster(closed.clock(), windows.first[i], windows.last[i], seen(plant, closed));
            found.merge(key, made, PlantCluster::and);
        }
        List<PlantCluster> all = new ArrayList<>(found.values());
        for (Part part : plant.standing) {
            all.add(new PlantCluster(-1, 0, 0, seen(plant, new Closed(-1, 0, List.of(part)))));
        }
        return all;
    }

    private static List<Object> kind(Part part) {
        return List.of(
                part.halfLife(),
                Arrays.stream(part.least()).boxed().toList(),
                bucket(part.excessAmps(), part.baseAmps()),
                bucket(part.useAmps(), part.baseAmps()));
    }

    private static int bucket(double amps, double over) {
        return (int) Math.round(RATIOS_AN_OCTAVE * Math.log((amps + 1e-9) / (over + 1e-6)) / Math.log(2));
    }

    /** What each source sees of all of it. */
    private static Part[][] seen(PlantLoads plant, Closed closed) {
        Part[][] seen = new Part[plant.sources.length][];
        for (int source = 0; source < seen.length; source++) {
            if (closed.mayBeBelow(source)) {
                int at = source;
                seen[source] = closed.parts().stream()
                        .map(part -> times(part, part.least()[at]))
                        .toArray(Part[]::new);
            }
        }
        return seen;
    }

    private static Part times(Part part, double factor) {
        return new Part(
                part.load(),
                factor * part.baseAmps(),
                factor * part.excessAmps(),
                part.halfLife(),
                factor * part.useAmps(),
                part.least());
    }

    /** Another of one part, of the same kind. */
    private PlantCluster and(PlantCluster other) {
        Part[][] both = new Part[parts.length][];
        for (int source = 0; source < parts.length; source++) {
            if (parts[source] != null) {
                both[source] = new Part[] {sum(parts[source][0], other.parts[source][0])};
            }
        }
        return new PlantCluster(clock, first, last, both);
    }

    private static Part sum(Part one, Part other) {
        return new Part(
                one.load(),
                one.baseAmps() + other.baseAmps(),
                one.excessAmps() + other.excessAmps(),
                one.halfLife(),
                one.useAmps() + other.useAmps(),
                one.least());
    }

    int clock() {
        return clock;
    }

    boolean isSwitched() {
        return clock >= 0;
    }

    double useAmps(int source) {
        return Arrays.stream(parts[source]).mapToDouble(Part::useAmps).sum();
    }

    /** Time: sources × instants of its window × its parts. */
    Place cheapest(SpreadSources.Costs costs) {
        Place cheapest = new Place(0, first, Double.POSITIVE_INFINITY);
        for (int source = 0; source < parts.length; source++) {
            if (parts[source] != null) {
                Place there = isSwitched() ? cheapest(costs, source) : new Place(source, 0, alwaysAmps(source));
                cheapest = there.amps() < cheapest.amps() ? there : cheapest;
            }
        }
        return cheapest;
    }

    private Place cheapest(SpreadSources.Costs costs, int source) {
        int where = first;
        double least = Double.POSITIVE_INFINITY;
        for (int i = first; i <= last; i++) {
            double sum = 0;
            for (Part part : parts[source]) {
                sum += costs.amps(part, source, clock, i);
            }
            if (sum < least) {
                least = sum;
                where = i;
            }
        }
        return new Place(source, where, least);
    }

    private double alwaysAmps(int source) {
        return Arrays.stream(parts[source])
                .mapToDouble(part -> part.baseAmps() + part.useAmps())
                .sum();
    }

    /** Adds it to what comes on at each instant. */
    void land(Place place, double[] bases, double[][] excess, int instants) {
        for (Part part : parts[place.source()]) {
            bases[place.instant()] += part.baseAmps();
            if (excess[part.halfLife()] == null) {
                excess[part.halfLife()] = new double[instants];
            }
            excess[part.halfLife()][place.instant()] += part.excessAmps();
        }
    }
}
