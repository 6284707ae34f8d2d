package evenrise.model.project;

/** What the other boards do when one is dead. */
public enum DeadBoard {
    /** They go on: boards do not know of each other, except those that one starts. */
    CARRY_ON,
    /** What needs a load of the dead board stays off. */
    STOP
}
