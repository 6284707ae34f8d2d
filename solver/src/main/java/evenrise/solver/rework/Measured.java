package evenrise.solver.rework;

import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * Currents as they were read on site.
 *
 * @param currents the greatest reading of each load over its phases and rows
 * @param problems every row that cannot be used, with its line and the likely cure
 * @param notes what was taken in a way that somebody should know of
 */
public record Measured(Map<String, Current> currents, List<String> problems, List<String> notes) {
    /**
     * One load's readings; rms, in ampere.
     *
     * @param runningAmps at full design use
     * @param idleAmps right after power-up
     */
    public record Current(OptionalDouble runningAmps, OptionalDouble idleAmps) {}

    public Measured {
        currents = new LinkedHashMap<>(currents);
        problems = List.copyOf(problems);
        notes = List.copyOf(notes);
    }

    /** The project with these currents in the place of its own. */
    public Project in(Project project) {
        return project.withLoads(project.loads().stream().map(this::measured).toList());
    }

    private Load measured(Load load) {
        Current current = currents.get(load.id());
        if (current == null) {
            return load;
        }
        boolean idleFollows = load.idleAmps() == load.runningAmps();
        double running = current.runningAmps.orElse(load.runningAmps());
        double idle = current.idleAmps.orElse(idleFollows ? running : load.idleAmps());
        boolean hasNoInrush = load.inrushAmps() <= load.baseAmps() + 1e-9;
        OptionalDouble inrush = load.inrushPeakAmps().isPresent() && hasNoInrush
                ? OptionalDouble.of(Math.sqrt(2) * idle)
                : load.inrushPeakAmps();
        return load.with()
                .runningAmps(running)
                .idleAmps(idle)
                .inrushPeakAmps(inrush)
                .build();
    }
}
