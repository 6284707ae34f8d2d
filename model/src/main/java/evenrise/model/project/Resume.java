package evenrise.model.project;

/** What comes of loads that were taken off by an event once the event is over. */
public enum Resume {
    /** They come back by themselves, in sequence. */
    SEQUENCE,
    /** They stay off until somebody commands them on. */
    STAY_OFF
}
