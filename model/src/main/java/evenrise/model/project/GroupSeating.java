package evenrise.model.project;

/** How shutdown groups sit on a board. */
public enum GroupSeating {
    /** Whole and without interruption. */
    ONE_BOARD,
    /** Anyhow. */
    ANY
}
