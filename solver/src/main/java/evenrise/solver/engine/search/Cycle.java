package evenrise.solver.engine.search;

import evenrise.solver.engine.state.CompiledProject;

/**
 * Cuts the budget into annealings, each longer than the one before, so that a small project is tried from several
 * sides while a large one is annealed twice, quickly and slowly. The last one ends with the budget.
 *
 * <p>Longer than some length, one annealing gains little. So where the budget is long and small changes are cheap, half of
 * it is kept for going on gently, again and again, from the best that any has come to.
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

    /** Where loads have little to do with each other. */
    private static final double GENTLE_STAGE_OF_PLAIN = 0.8;

    /** Moves for the square of each load from which a budget is long. */
    private static final double LONG_PER_SQUARE = 50;

    /** Part of a long budget that hot annealings may use, and that of each gentle one after them. */
    private static final double HOT_PART = 0.5;

    private static final double AGAIN_PART = 0.125;

    private static final double ALL_BUT_STEPS = 0.999;

    private final boolean beginsGently;
    private final boolean isPlain;
    private final double longMoves;
    private boolean goesOn;
    private boolean isGentle;
    private double length;
    private double moves;
    private double begun;
    private double budgetUsed;
    private int number;

    Cycle(CompiledProject compiled, boolean beginsGently) {
        this.beginsGently = beginsGently;
        isGentle = beginsGently;
        isPlain = compiled.isPlain() && !compiled.isSmall();
        double square = (double) compiled.loadCount() * compiled.loadCount();
        length = FEWEST_MOVES + MOVES_PER_SQUARE * square;
        longMoves = LONG_PER_SQUARE * square;
    }

    /**
     * @param used part of the whole budget that is used, from 0 to 1
     * @return whether an annealing has ended, and another begins
     */
    boolean budgetUsed(double used) {
        budgetUsed = used;
        boolean hasEnded = progress() >= 1 && used < 1;
        if (hasEnded) {
            goesOn |= isFirst() && !beginsGently && isPlain && moves / used >= longMoves;
            isGentle = goesOn && used >= HOT_PART - AGAIN_PART; // a short hot one would only lose what was found
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
        double end = end();
        double byBudget = begun < end ? (budgetUsed - begun) / (end - begun) : 1;
        return Math.min(1, Math.max(byBudget, moves / length));
    }

    /** Part of the budget that may be used when this annealing ends. */
    private double end() {
        if (isFirst()) {
            return beginsGently ? GENTLE_PART : FIRST_PART;
        }
        if (isGentle) {
            double next = begun + AGAIN_PART;
            return next > 1 - AGAIN_PART / 2 ? 1 : next;
        }
        return goesOn ? HOT_PART : 1;
    }

    /** Whether the budget is used but for a step or two, and with it the last annealing. */
    boolean isSpent() {
        return budgetUsed > ALL_BUT_STEPS;
    }

    /** How far the energy is through its stages, from 0 to 1. */
    double stage() {
        double gentle = isPlain ? GENTLE_STAGE_OF_PLAIN : GENTLE_STAGE;
        return isGentle ? gentle + (1 - gentle) * progress() : progress();
    }

    /** Whether this annealing keeps what is good already. */
    boolean isGentle() {
        return isGentle;
    }

    boolean isFirst() {
        return number == 0;
    }
}
