package evenrise.model.project;

/** Which commands the lock refuses. The supply and the emergency contact act all the same. */
public enum LockRefuses {
    ALL,
    ON_COMMANDS,
    OFF_COMMANDS
}
