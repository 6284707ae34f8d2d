package evenrise.model.project;

/** What the dips of a sequence are held against. */
public enum DipCriterion {
    /** Voltage changes that disturb others on the network. */
    IEC_61000_3_3,
    /** Rapid changes and range of voltage that a network offers. */
    EN_50160,
    /** Range of steady voltage at the equipment. */
    ANSI_C84_1,
    /** What information technology equipment rides through. */
    ITI,
    /** What semiconductor equipment rides through. */
    SEMI_F47
}
