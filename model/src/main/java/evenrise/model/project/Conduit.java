package evenrise.model.project;

/** What surrounds the conductors; it changes their impedance to alternating current. */
public enum Conduit {
    NONMETALLIC,
    ALUMINIUM,
    STEEL
}
