package evenrise.model.project;

/** Order in which the poles of a three-phase motor's breaker touch the phases when it turns the right way. */
public enum MotorRotation {
    /** A B C, or B C A, or C A B. */
    FORWARD,
    /** A C B, or C B A, or B A C. */
    REVERSE,
    /** It turns the right way whatever the order, as behind a drive. */
    ANY
}
