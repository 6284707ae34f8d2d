package evenrise.solver.rework;

/** What one step of the work is. */
public enum WorkStepKind {
    /** The off command: everything that boards switch goes off, in its order, or what is of one system. */
    SYSTEM_OFF,
    /** A load whose panel, board or other need is about to be dead goes off, too; nobody works on it. */
    SWITCH_OFF,
    /** A load is switched off, isolated and locked out. */
    LOCK_OUT,
    /** A panel is isolated, with the boards in it, and found without voltage; every breaker in it is open. */
    ISOLATE_PANEL,
    /** A control board is isolated and found without voltage. */
    ISOLATE_BOARD,
    /** A dead breaker is parked in a free slot, since its own is wanted before the next one is free. */
    PARK,
    /** A dead breaker is taken out and its conductors are capped, since no slot is free to park it. */
    TAKE_OUT,
    /** A dead breaker goes into its new slot and its conductors on it. */
    RE_TERMINATE,
    /** A breaker that is not there yet goes into its slot, with its conductors drawn to the load. */
    PUT_IN,
    /** The breaker of gear that is gone comes out for good: its conductors are capped and tagged, its slot is closed. */
    REMOVE,
    /** The breaker of gear that is gone stays in its slot as a spare: its conductors come off, are capped and tagged. */
    LEAVE_SPARE,
    /** A spare breaker comes out, since its slot is wanted for another. */
    REMOVE_SPARE,
    /** The conductors of a load that is new go on the spare breaker that is in its slot. */
    USE_SPARE,
    /** The control lead of gear that is gone comes off its output for good. */
    REMOVE_LEAD,
    /** A control lead is lifted and tagged, since its output is wanted before the next one is free. */
    LIFT_LEAD,
    /** A control lead goes to its new output. */
    RE_LAND,
    /** A board is set otherwise; it counts from the next on command. */
    SET_BOARD,
    /** An output with a time of its own is set otherwise; it counts from the next on command. */
    SET_OUTPUT,
    /** A three-phase motor that was re-terminated stays uncoupled until it is seen to turn the right way. */
    CHECK_ROTATION,
    /** What was moved is tight and without a fault, covers are on and people clear. */
    MAKE_READY,
    /** A panel is live again, with every breaker in it open. */
    ENERGISE_PANEL,
    /** A control board is live again. */
    ENERGISE_BOARD,
    /** The lock comes off; the load stays off until its board switches it. */
    UNLOCK,
    /** The lock comes off and the load on. */
    ENERGISE,
    /** A load that was off without being worked on comes on again. */
    SWITCH_ON,
    /** The on command: everything that boards switch comes on, in its order, or what is of one system. */
    SYSTEM_ON,
    /** A load that was worked on is tried: its breaker and its output. */
    FUNCTION_TEST,
    /** Labels and the schedule are brought to what is on the wall. */
    RELABEL
}
