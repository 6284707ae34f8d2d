package evenrise.model.project;

/** Utilisation categories of contactors for alternating current: what they are tested to make and break. */
public enum ContactorCategory {
    /** Resistive or slightly inductive loads. */
    AC_1,
    /** Squirrel-cage motors, broken while they run. */
    AC_3,
    /** Squirrel-cage motors, also plugged and inched. */
    AC_4,
    /** Discharge lamps. */
    AC_5A,
    /** Incandescent lamps. */
    AC_5B,
    /** Transformers. */
    AC_6A,
    /** Capacitors. */
    AC_6B,
    /** Slightly inductive loads in households. */
    AC_7A,
    /** Motors in households. */
    AC_7B
}
