package evenrise.solver.engine.search;

import evenrise.solver.engine.move.DraftMove;
import evenrise.solver.engine.state.PlanSums;

/** Leads a search that looks for more than the best score: says what is tried next, and what of it stays. */
public interface Steering {
    /** The plan that is searched, from now on by these sums; they follow every change that is tried, and its undoing. */
    void take(PlanSums sums);

    /** One load of the plan may be elsewhere, or come on at another time. */
    void loadChanged(int load);

    /** One board of the plan may be set otherwise. */
    void boardChanged(int board);

    /**
     * Draws what is tried next.
     *
     * @param draft stays empty where nothing was found
     * @param used part of the budget that is used, from 0 to 1
     */
    void draw(DraftMove draft, double used);

    /**
     * Whether what was drawn last stays; the sums are those with it.
     *
     * @param energyAmps of the plan with it, by a norm that is all but the peak
     */
    boolean stays(double energyAmps);

    /** Whether nothing is left to try. */
    boolean isDone();
}
