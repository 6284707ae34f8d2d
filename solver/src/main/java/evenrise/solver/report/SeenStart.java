package evenrise.solver.report;

import evenrise.model.observation.Observation;
import java.util.List;

/**
 * One recorded start.
 *
 * @param file the recording's name
 * @param waves peaks and half-lives, where waves were recorded
 */
public record SeenStart(String file, Observation seen, List<WaveStart> waves) {
    public SeenStart {
        waves = List.copyOf(waves);
    }
}
