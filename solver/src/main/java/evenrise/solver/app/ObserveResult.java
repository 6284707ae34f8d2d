package evenrise.solver.app;

import evenrise.model.observation.Observation;
import evenrise.solver.report.ObservationText;
import evenrise.solver.report.WaveStart;
import java.util.List;

/**
 * What a recorded start says of a plan.
 *
 * @since 0.1.0
 */
public final class ObserveResult implements Listing {
    private final Observation observation;
    private final List<WaveStart> waves;
    private final String place;
    private final List<String> columns;

    ObserveResult(Observation observation, List<WaveStart> waves, String place, List<String> columns) {
        this.observation = observation;
        this.waves = List.copyOf(waves);
        this.place = place;
        this.columns = List.copyOf(columns);
    }

    /** Whether nothing that was seen is other than planned. */
    public boolean isAsPlanned() {
        return observation.isAsPlanned() && observation.isRecognised();
    }

    /** Whether the recording shows the start that the plan is of. */
    public boolean isRecognised() {
        return observation.isRecognised();
    }

    @Override
    public List<String> text(TextStyle style) {
        return ObservationText.lines(observation, waves, place, columns, style.isFull(), style.paint());
    }
}
