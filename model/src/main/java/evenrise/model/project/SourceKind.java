package evenrise.model.project;

/** What stands behind the supply. */
public enum SourceKind {
    /** A network of a stated fault current. */
    UTILITY,
    TRANSFORMER,
    GENERATOR,
    /** An uninterruptible supply on its inverter. */
    UPS
}
