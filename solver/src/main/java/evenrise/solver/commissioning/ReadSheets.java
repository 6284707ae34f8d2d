package evenrise.solver.commissioning;

import evenrise.model.measured.PoleReading;
import evenrise.model.measured.SiteReadings;
import evenrise.solver.rework.Measured;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
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

    /** The greatest reading of each load, for who asks no more. */
    public Measured greatest() {
        Map<String, Measured.Current> currents = new LinkedHashMap<>();
        for (PoleReading each : readings.poles()) {
            if (each.idleAmps().isPresent() || each.runningAmps().isPresent()) {
                currents.merge(
                        each.load(),
                        new Measured.Current(each.runningAmps(), each.idleAmps()),
                        (one, other) -> new Measured.Current(
                                greater(one.runningAmps(), other.runningAmps()),
                                greater(one.idleAmps(), other.idleAmps())));
            }
        }
        return new Measured(currents, problems, notes);
    }

    private static OptionalDouble greater(OptionalDouble one, OptionalDouble other) {
        return DoubleStream.concat(one.stream(), other.stream()).max();
    }
}
