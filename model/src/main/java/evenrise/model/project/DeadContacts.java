package evenrise.model.project;

/** What the breakers of a board do that dies. */
public enum DeadContacts {
    /** They stay as they are: each is held by its own mechanism, and nothing can be switched any longer. */
    STAY,
    /** They open. */
    OPEN
}
