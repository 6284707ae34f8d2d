package evenrise.model.project;

/** What a load does in the signal chain, which decides when it may come on. */
public enum Role {
    /** Mixes, routes, converts or controls the signal; comes on first and settles. */
    PROCESSING,
    /** Neither processes the signal nor drives loudspeakers; comes on between the two. */
    AUXILIARY,
    /** Drives loudspeakers (or what is as abrupt); comes on last. */
    AMPLIFIER
}
