package evenrise.model.project;

/** How the slots of a panel are numbered, hence which slots lie on one bus row. */
public enum SlotNumbering {
    /** Odd slots on the left, even on the right; row = ⌈slot/2⌉; a breaker of n poles takes slot, slot + 2, … */
    ALTERNATING,
    /** One column; row = slot; a breaker of n poles takes slot, slot + 1, … */
    SEQUENTIAL
}
