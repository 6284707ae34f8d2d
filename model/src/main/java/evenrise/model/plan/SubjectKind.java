package evenrise.model.plan;

/** What kind of thing a finding is about; it tells ids apart that are spelt alike. */
public enum SubjectKind {
    LOAD,
    PANEL,
    /** A further node of the distribution: neither the supply nor a panel. */
    NODE,
    BOARD,
    /** A shutdown group. */
    GROUP,
    SYSTEM,
    SUPPLY
}
