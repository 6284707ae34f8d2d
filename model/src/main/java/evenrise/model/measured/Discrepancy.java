package evenrise.model.measured;

import evenrise.model.project.Phase;
import java.util.Comparator;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Something that is other than planned, or other than it was at an earlier visit.
 *
 * @param weight how it is to be taken
 * @param subject id of the load, panel, node or device
 * @param phase empty where it is about all or none
 * @param planned what is planned, or the limit where that is passed
 * @param measured empty where words say it
 * @param tolerance how far both may be apart by meter and model
 * @param cause the likely one
 * @param lookAt what to look at first
 * @param visit when, by what and where it stands
 */
public record Discrepancy(
        Weight weight,
        String subject,
        Optional<Phase> phase,
        MeasuredQuantity quantity,
        OptionalDouble planned,
        OptionalDouble measured,
        double tolerance,
        String cause,
        String lookAt,
        Visit visit) {
    /** What matters most first. */
    static final Comparator<Discrepancy> BY_WEIGHT = Comparator.comparing(Discrepancy::weight)
            .thenComparing(Comparator.comparingDouble(Discrepancy::part).reversed())
            .thenComparing(Discrepancy::subject)
            .thenComparing(Discrepancy::quantity);

    public enum Weight {
        /** A limit is passed, or may be, or what keeps people safe is missing. */
        UNSAFE,
        /** Something is wired, set or connected otherwise, or does not work. */
        FAULT,
        /** A figure is another than stated, by more than meter and model may be off. */
        DIFFERS,
        /** Less than stated: no danger, but room that nobody uses, or not yet full use. */
        LESS
    }

    /** How far apart, of what is planned; endless where no figures say it. */
    double part() {
        if (planned.isEmpty() || measured.isEmpty()) {
            return Double.POSITIVE_INFINITY;
        }
        double apart = Math.abs(measured.getAsDouble() - planned.getAsDouble());
        return apart / Math.max(1e-9, Math.max(planned.getAsDouble(), tolerance));
    }
}
