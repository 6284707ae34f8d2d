package evenrise.solver.recording;

import evenrise.model.project.Phase;
import java.util.Map;

/**
 * Instantaneous currents over a short time.
 *
 * @param seconds by the recorder's clock
 */
public record RecordedWave(double[] seconds, Map<Phase, double[]> amps) {}
