package evenrise.model.project;

/** Instantaneous trip band of a miniature circuit breaker (IEC 60898-1). */
public enum TripCurve {
    B,
    C,
    D
}
