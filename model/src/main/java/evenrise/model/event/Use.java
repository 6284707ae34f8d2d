package evenrise.model.event;

/** What loads draw that are on when something happens. */
public enum Use {
    /** What they draw right after power-up: the show does not run. */
    IDLE,
    /** The greater of that and what they draw at full design use: the show runs. */
    FULL
}
