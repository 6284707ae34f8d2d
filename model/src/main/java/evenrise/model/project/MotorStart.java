package evenrise.model.project;

/** What closes when a motor starts. */
public enum MotorStart {
    /** The load's own breaker: the inrush of the sequence is the motor's start. */
    BREAKER,
    /** A contactor of its own, open when the breaker closes: that step has no inrush, the start comes later, in service. */
    CONTACTOR
}
