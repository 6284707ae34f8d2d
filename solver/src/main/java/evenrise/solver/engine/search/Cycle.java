package evenrise.solver.engine.search;

import evenrise.solver.engine.state.CompiledProject;

/**
 * Cuts the budget into annealings, each longer than the one before, so that a small project is tried from several
 * sides while a large one is annealed twice, quickly and slowly. The last one ends with the budget.
 */
final class Cycle {
    private static final double FEWEST_MOVES = 4_000;
    private static final double GROWTH = 1.2;
    private static final double MOVES_PER_SQUARE = 60;

    /** Part of the budget that the first annealing may use: whoever stops early finds a cooled plan. */
    private static final double FIRST_PART = 0.15;

    /** Part of the budget for going on gently from a plan that is good already; the rest tries to find another. */
    private static final double GENTLE_PART = 0.5;

    /** A gentle annealing looks at the profile as others do at this part of their way. */
    private static final double GENTLE_STAGE = 0.6;

    private static final double ALL_BUT_STEPS = 0.999;

    private final boolean beginsGently;
    private double length;
    private double moves;
    private double begun;
    private double budgetUsed;
    private int number;

    Cycle(CompiledProject compiled, boolean beginsGently) {
        this.beginsGently = beginsGently;
        length = FEWEST_MOVES + MOVES_PER_SQUARE * compiled.loadCount() * compiled.loadCount();
    }

    /**
     * @param used part of the whole budget that is used, from 0 to 1
     * @return whether an annealing has ended, and another begins
     */
    boolean budgetUsed(double used) {
        budgetUsed = used;
        boolean hasEnded = progress() >= 1 && used < 1;
        if (hasEnded) {
            number++;
            length *= GROWTH;
            moves = 0;
            begun = used;
        }
        return hasEnded;
    }

    /** So much work as so many moves. */
    void work(int worth) {
        moves += worth;
    }

    /** How far this annealing is, from 0 to 1. */
    double progress() {
        double firstPart = beginsGently ? GENTLE_PART : FIRST_PART;
        double end = isFirst() ? firstPart : 1;
        double byBudget = begun < end ? (budgetUsed - begun) / (end - begun) : 1;
        return Math.min(1, Math.max(byBudget, moves / length));
    }

    /** Whether the budget is used but for a step or two, and with it the last annealing. */
    boolean isSpent() {
        return budgetUsed > ALL_BUT_STEPS;
    }

    /** How far the energy is through its stages, from 0 to 1. */
    double stage() {
        return isGentle() ? GENTLE_STAGE + (1 - GENTLE_STAGE) * progress() : progress();
    }

    /** Whether this annealing keeps what is good already. */
    boolean isGentle() {
        return beginsGently && isFirst();
    }

    boolean isFirst() {
        return number == 0;
    }
}
