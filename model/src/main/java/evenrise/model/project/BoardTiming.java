package evenrise.model.project;

/** How a board times its outputs. */
public enum BoardTiming {
    /** One start delay, then a step between outputs. */
    STEPPED,
    /** A time of its own for each output. */
    EACH
}
