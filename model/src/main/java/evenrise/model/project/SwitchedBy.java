package evenrise.model.project;

/** What an output switches for a load. */
public enum SwitchedBy {
    /** A breaker that can be switched. */
    BREAKER,
    /** A contactor behind an ordinary breaker. */
    CONTACTOR
}
