package evenrise.model.project;

/** What becomes of a sequence that is coming up when the emergency contact closes. */
public enum SequenceInEmergency {
    /** Nothing more comes on until the release. */
    STOP,
    /** Loads that hold go on coming up, as far as nothing that they need has dropped. */
    GO_ON
}
