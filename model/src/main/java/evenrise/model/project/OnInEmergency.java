package evenrise.model.project;

/** What an on command does while the emergency contact is closed. */
public enum OnInEmergency {
    /** It is refused. */
    REFUSE,
    /** What holds comes on in sequence; what drops follows in sequence after the release. */
    HELD_GROUPS
}
