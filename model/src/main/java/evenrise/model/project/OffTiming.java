package evenrise.model.project;

/** How a board switches off. */
public enum OffTiming {
    /** As the mirror image of switching on. */
    MIRROR,
    /** Each output at an off time of its own. */
    EACH
}
