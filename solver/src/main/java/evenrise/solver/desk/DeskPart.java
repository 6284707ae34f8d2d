package evenrise.solver.desk;

/** A part of the desk that windows can ask of. All of them are listed in {@link DeskParts}. */
interface DeskPart {
    /** Says what can be asked, and who answers. */
    void offer(DeskRoutes routes);

    /** Ends what runs in the background. */
    default void close() {}
}
