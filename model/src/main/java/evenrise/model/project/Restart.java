package evenrise.model.project;

/** Where a sequence begins that has only some of the loads to bring on. */
public enum Restart {
    /** At its start: steps of loads that are on already pass like those of unused outputs. */
    WHOLE,
    /**
     * At the first load that is missing, so that it comes on at once; but never so that a load comes on sooner after one
     * that is on already than in the plan.
     */
    MISSING
}
