package evenrise.solver.app;

import evenrise.model.observation.Observation;
import evenrise.solver.report.ObservationText;
import evenrise.solver.report.SeenStart;
import java.util.List;
import java.util.stream.Stream;

/**
 * What a recorded start says of a plan.
 *
 * @since 0.1.0
 */
public final class ObserveResult implements Listing {
    private final SeenStart first;
    private final List<SeenStart> again;
    private final String place;
    private final List<String> columns;

    ObserveResult(SeenStart first, List<SeenStart> again, String place, List<String> columns) {
        this.first = first;
        this.again = List.copyOf(again);
        this.place = place;
        this.columns = List.copyOf(columns);
    }

    private Stream<Observation> all() {
        return Stream.concat(Stream.of(first), again.stream()).map(SeenStart::seen);
    }

    /** Whether nothing that was seen is other than planned, in any recording. */
    public boolean isAsPlanned() {
        return all().allMatch(Observation::isAsPlanned) && isRecognised();
    }

    /** Whether each recording shows the start that the plan is of. */
    public boolean isRecognised() {
        return all().allMatch(Observation::isRecognised);
    }

    @Override
    public List<String> text(TextStyle style) {
        return ObservationText.lines(first, again, place, columns, style.isFull(), style.paint());
    }
}
