package evenrise.model.plan;

/** On which side of its limit a figure stays. */
public enum HeldTo {
    /** The figure is at most the limit: a voltage drop, a fault current beside what a breaker interrupts. */
    AT_MOST,
    /** The figure is at least the limit: an ampacity, a fault current beside what trips a breaker. */
    AT_LEAST
}
