package evenrise.model.project;

/** What starts the boards that follow another. */
public enum PassesOn {
    /** Its last output in use. */
    LAST_USED,
    /** Its last output, used or not. */
    ALL
}
