package evenrise.model.project;

/** What a shutdown group does while the emergency contact is closed. */
public enum OnEmergency {
    DROP,
    HOLD
}
