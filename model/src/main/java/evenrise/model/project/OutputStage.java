package evenrise.model.project;

/** How an amplifier's output stage works. */
public enum OutputStage {
    /** Classes AB and B on fixed rails. */
    LINEAR,
    /** Class D. */
    SWITCHING
}
