package evenrise.model.project;

/** What an emergency contact drops of a board. */
public enum EmergencyBy {
    /** All of it, or nothing. */
    BOARD,
    /** Chosen outputs. */
    OUTPUT
}
