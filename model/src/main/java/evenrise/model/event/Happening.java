package evenrise.model.event;

/** What may happen to the system from outside; the words of script files. */
public enum Happening {
    /** Somebody commands the system on. */
    SYSTEM_ON,
    /** Somebody commands the system off. */
    SYSTEM_OFF,
    GROUP_ON,
    GROUP_OFF,
    LOCK,
    UNLOCK,
    /** The emergency contact closes. */
    EMERGENCY,
    /** The emergency contact opens. */
    RELEASE,
    /** The voltage of some or all phases changes. */
    MAINS,
    /** A board answers nothing any longer. */
    BOARD_DEAD,
    /** A dead board works again. */
    BOARD_BACK,
    /** From now on a load's breaker does not open when it should. */
    STAYS_CLOSED,
    /** From now on a load's breaker does not close when it should. */
    STAYS_OPEN,
    /** From now on a load's breaker closes late. */
    LATE,
    /** From now on a load's breaker closes early, though not before the sequence begins. */
    EARLY,
    /** A load's breaker is mended, and its board told where it stands. */
    MENDED,
    /** The device that feeds a panel or node, or a load's breaker, trips; the control is not told. */
    TRIP,
    /** Somebody closes what has tripped. */
    RESET,
    /** A panel or node is transferred to its alternate: dead for its transfer time, then fed from there. */
    TRANSFER,
    /** It is transferred back to what feeds it as usual. */
    TRANSFER_BACK,
    /** A neutral breaks on the way to a panel or node; what comes of the voltages is told, not played. */
    NEUTRAL_LOST
}
