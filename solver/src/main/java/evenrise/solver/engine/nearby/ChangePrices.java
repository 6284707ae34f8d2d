package evenrise.solver.engine.nearby;

/** What changes to a plan as built cost by kind, in one unit that adds up, such as minutes of work. */
public interface ChangePrices {
    /** Of a breaker in another slot of its panel. */
    double samePanel();

    /** Of a breaker in another panel. */
    double otherPanel();

    /** Of a breaker that is not there yet. */
    double newCircuit();

    /** Of a lead on another output. */
    double lead();

    /** Of a lead between other panels than before. */
    double drawnLead();

    double setting();

    /** Of each load that is worked on, whatever is done. */
    double test();

    /** Of each panel and board that is dead for it. */
    double isolation();

    /** Of each system that is off for it. */
    double shutdown();

    /** Whether a panel is dead while a breaker in it is worked on. */
    boolean isPanelDead(String panel);

    /** Whether a board is dead while a lead on it is. */
    boolean isBoardDead(String board);

    /** Systems that are off with a load, a bit each. */
    long offWithLoad(String load);

    /** Systems that are off with a dead panel, a bit each. */
    long offWithPanel(String panel);

    /** Systems that are off with a dead board, a bit each. */
    long offWithBoard(String board);
}
