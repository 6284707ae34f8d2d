package evenrise.model.project;

/** Which systems may start while others start or run. */
public enum Overlap {
    /** All start by one command, on one clock. */
    TOGETHER,
    /** One starts while the others may be in full use. */
    ONE_AT_A_TIME,
    /** Each may start at any time, also while others do. */
    ANY
}
