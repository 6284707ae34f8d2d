package evenrise.solver.commissioning;

import evenrise.model.measured.PoleReading;
import evenrise.model.measured.SiteReadings;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.solver.rework.Measured;
import evenrise.solver.rework.ReadingWarnings;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;

/**
 * What filled sheets say.
 *
 * @param problems every cell and row that cannot be used, with its line and the likely cure
 * @param notes what was taken in a way that somebody should know of
 */
public record ReadSheets(SiteReadings readings, List<String> problems, List<String> notes) {
    public ReadSheets {
        problems = List.copyOf(problems);
        notes = List.copyOf(notes);
    }

    /** The greatest reading of each load, for who asks no more; what is odd about them is noted first. */
    public Measured greatest(Project project) {
        Map<String, Measured.Current> currents = new LinkedHashMap<>();
        Map<String, List<ReadingWarnings.Row>> running = new LinkedHashMap<>();
        for (PoleReading each : readings.poles()) {
            each.runningAmps()
                    .ifPresent(amps -> running.computeIfAbsent(each.load(), any -> new ArrayList<>())
                            .add(new ReadingWarnings.Row(each.visit().at(), amps)));
            if (each.idleAmps().isPresent() || each.runningAmps().isPresent()) {
                currents.merge(
                        each.load(),
                        new Measured.Current(each.runningAmps(), each.idleAmps()),
                        (one, other) -> new Measured.Current(
                                greater(one.runningAmps(), other.runningAmps()),
                                greater(one.idleAmps(), other.idleAmps())));
            }
        }
        Map<String, Load> loads = project.loads().stream().collect(Collectors.toMap(Load::id, Function.identity()));
        List<String> all = new ArrayList<>(ReadingWarnings.of(loads, running));
        all.addAll(notes);
        return new Measured(currents, problems, all);
    }

    private static OptionalDouble greater(OptionalDouble one, OptionalDouble other) {
        return DoubleStream.concat(one.stream(), other.stream()).max();
    }
}
