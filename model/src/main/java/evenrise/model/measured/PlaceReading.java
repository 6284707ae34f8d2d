package evenrise.model.measured;

import evenrise.model.project.Phase;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What was read of a whole panel, of a node or the supply.
 *
 * @param place its id
 * @param volts from line to neutral
 * @param isRotationRight empty where nobody looked
 * @param insulationMegohms the least that was read
 */
public record PlaceReading(
        String place,
        Map<Phase, Double> volts,
        Map<Phase, Double> idleAmps,
        Map<Phase, Double> runningAmps,
        Map<Phase, Double> peakAmps,
        OptionalDouble neutralAmps,
        Optional<Boolean> isRotationRight,
        OptionalDouble insulationMegohms,
        Optional<Boolean> passed,
        Visit visit) {
    public PlaceReading {
        volts = Map.copyOf(volts);
        idleAmps = Map.copyOf(idleAmps);
        runningAmps = Map.copyOf(runningAmps);
        peakAmps = Map.copyOf(peakAmps);
    }
}
