package evenrise.model.event;

/** What kind of thing happened. */
public enum EntryKind {
    /** Something from outside that was accepted. */
    INPUT,
    /** A command that was refused. */
    REFUSED,
    /** A command that waits for the end of the sequence. */
    KEPT,
    /** A sequence begins to come up. */
    BEGINS,
    /** A sequence begins to go down. */
    GOES_DOWN,
    /** A breaker closes. */
    CLOSES,
    /** A breaker opens. */
    OPENS,
    /** A breaker does not do what it was told. */
    FAILS,
    /** A sequence is through. */
    ENDS,
    /** The supply was low for too long: everything switched opens. */
    TRIPS,
    /** The supply is steady: the wait begins. */
    STEADY,
    /** Loads that stayed connected draw their inrush anew. */
    INRUSH
}
