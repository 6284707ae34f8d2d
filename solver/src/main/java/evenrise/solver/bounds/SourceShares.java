package evenrise.solver.bounds;

import evenrise.model.project.Project;
import evenrise.solver.bounds.PlantLoads.Closed;
import evenrise.solver.bounds.PlantLoads.Part;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What each load costs a source at least, by weights of instants and of what is in use with sum 1: no phase of the source has
 * a peak below the sum of these over the loads that it feeds, each times the part of it that the phase sees.
 *
 * @param source place of the source among the distribution's points
 * @param leastAmps what its peak stays below in no plan, by shorter arguments
 * @param aloneAmps what its peak stays below in no plan that has what one output closes below it, by the load that leads it
 * @param ampsByLoad of one whole pole
 */
public record SourceShares(
        int source, double leastAmps, Map<String, Double> aloneAmps, Map<String, Double> ampsByLoad) {
    private static final int ROUNDS = 300;

    /** Time: as {@link ProvenBounds#of} takes for such a project. */
    public static List<SourceShares> of(Project project) {
        Seats seats = new Seats(project);
        SourcePeaks peaks = new SourcePeaks(project, seats);
        PlantLoads plant = new PlantLoads(project, seats);
        int end = plant.grid.count() - 1;
        PlantWindows windows = new PlantWindows.Order(plant).until(end);
        if (!windows.possible || !plant.allFit()) {
            return List.of();
        }
        SpreadSources spread = new SpreadSources(plant, () -> false);
        PlantWeights weights = spread.better(PlantWeights.begin(plant, windows, end), windows, ROUNDS);
        SpreadSources.Costs costs = spread.costs(weights);
        List<SourceShares> all = new ArrayList<>();
        for (int source = 0; source < plant.sources.length; source++) {
            Map<String, Double> amps = new HashMap<>();
            for (Part part : plant.standing) {
                amps.put(part.load().id(), part.baseAmps() + part.useAmps());
            }
            for (int at = 0; at < plant.closed.size(); at++) {
                Closed closed = plant.closed.get(at);
                for (Part part : closed.parts()) {
                    double least = costs.least(part, source, closed.clock(), windows.first[at], windows.last[at]);
                    amps.put(part.load().id(), least * (1 - SpreadSources.ROUNDING));
                }
            }
            int point = plant.sources[source];
            all.add(new SourceShares(point, peaks.amps(point), Map.copyOf(peaks.alone(point)), Map.copyOf(amps)));
        }
        return all;
    }
}
