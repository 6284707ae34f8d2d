package evenrise.model.project;

/** How closing times spread within the timing tolerance. */
public enum Spread {
    /** Every time as likely as another. */
    UNIFORM,
    /** Bell-shaped, a third of the tolerance as its deviation, cut off at the tolerance. */
    NORMAL
}
