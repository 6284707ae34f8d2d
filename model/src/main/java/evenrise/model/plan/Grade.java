package evenrise.model.plan;

/** How a remark of the electrical review is to be taken. */
public enum Grade {
    /** A limit of the practice is exceeded. */
    BREAKS,
    /** A recommendation is exceeded; no rule is broken. */
    EXCEEDS_RECOMMENDATION,
    /** Worth knowing. */
    NOTE,
    /** The project lacks what the check needs; nothing is said of the plant. */
    NOT_CHECKED
}
