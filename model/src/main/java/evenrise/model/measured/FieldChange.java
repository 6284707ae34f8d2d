package evenrise.model.measured;

import evenrise.model.project.MeasuredValue;
import java.util.Optional;

/**
 * What a reading says of one field of a load.
 *
 * @param field as the project's file calls it
 * @param before what it said
 * @param after what it says now
 * @param wasGuessed whether what it said had been guessed
 * @param measured greatest reading over poles; of a load that was not measured what its class was measured at
 * @param spread how far that may be off
 * @param visit where it was read; empty for what follows from others of its class
 */
public record FieldChange(
        Kind kind,
        String load,
        String field,
        double before,
        double after,
        boolean wasGuessed,
        double measured,
        double spread,
        Optional<Visit> visit,
        String why) {
    public enum Kind {
        /** More than stated: taken, since bounds must hold. */
        RAISED,
        /** Less than stated, and somebody confirmed that it was at full use. */
        LOWERED,
        /** Less than stated, and nobody confirmed, or a peak of one closing: the stated value stays. */
        KEPT,
        /** Guessed, and raised by what others of its class were measured at. */
        RAISED_BY_CLASS,
        /** Guessed, and others of its class were measured at less: stays. */
        KEPT_BESIDE_CLASS
    }

    /** Whether the project says another figure now. */
    public boolean isTaken() {
        return kind == Kind.RAISED || kind == Kind.LOWERED || kind == Kind.RAISED_BY_CLASS;
    }

    /** Whether nothing flowed that the meter could tell from none: of a dead load no plate is right or wrong. */
    public boolean isDead() {
        return measured <= spread;
    }

    /** Whether somebody who saw it in full use could lower what is stated by it: not by a peak, which is of one closing. */
    public boolean waitsForFullUse() {
        return kind == Kind.KEPT && !isDead() && !field.equals(MeasuredValue.PEAK);
    }

    /** How far the stated figure was off, as a part of it; positive where it stated too little. */
    public double offBy() {
        return before > 0 ? measured / before - 1 : 0;
    }
}
