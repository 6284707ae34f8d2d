package evenrise.model.project;

/** What may happen to a system whose peak is known from the plan alone; docs/events.md has the arguments. */
public enum PlanEvent {
    /** The mains return with everything switched open: unswitched loads at once, then the sequence. */
    RETURN,
    /** The emergency contact opens: what dropped comes back in sequence onto what held. */
    RELEASE,
    /** One board, whichever is worst, is dead through a brownout, or comes back while the rest is on. */
    BOARD_FAILURE,
    /** A deep dip that is too short to open anything, so that all loads draw their inrush at once. */
    DIP
}
