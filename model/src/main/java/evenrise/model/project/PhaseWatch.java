package evenrise.model.project;

/** Which phases decide that the supply is low. */
public enum PhaseWatch {
    /** The supply is low as soon as any phase is; it is steady when every phase is. */
    ANY,
    /** The supply is low when all phases are; it is steady when any phase is. Loss of one phase goes unseen. */
    ALL
}
