package evenrise.solver.engine.search;

import evenrise.solver.engine.state.CompiledProject;

/**
 * Cuts the budget into annealings, each longer than the one before, so that a small project is tried from several
 * sides while a large one is annealed twice, quickly and slowly. The last one ends with the budget.
 *
 * <p>Longer than some length, one annealing gains little. So where the budget is long and small changes are cheap, half of
 * it is kept for going on gently, again and again, from the best that any has come to. After a few times that gains no
 * more, either: which boards have which loads was settled while it was hot. So the longest budgets are cut into several
 * tries, each hot and then gentle, and the last part goes on gently from the best of them all.
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

    /** Moves of one of several tries for the square of each load, and part of the budget that comes after them all. */
    private static final double TRY_PER_SQUARE = 75;

    private static final double LAST_PART = 0.2;

    /** So far a first annealing goes in plain projects, however long the budget is, in moves for the square of each load. */
    private static final double FIRST_PER_SQUARE = 15;

    private static final double ROUNDING = 1e-9;
    private static final double ALL_BUT_STEPS = 0.999;

    private final boolean beginsGently;
    private final boolean isPlain;
    private final double square;
    private boolean goesOn;
    private boolean isGentle;
    private boolean isAnew;
    private int tries = 1;
    private double length;
    private double moves;
    private double allMoves;
    private double usedBefore = Double.NaN;
    private double budgetMoves;
    private double begun;
    private double budgetUsed;
    private int number;

    Cycle(CompiledProject compiled, boolean beginsGently) {
        this.beginsGently = beginsGently;
        isGentle = beginsGently;
        isPlain = compiled.isPlain() && !compiled.isSmall();
        square = (double) compiled.loadCount() * compiled.loadCount();
        length = FEWEST_MOVES + MOVES_PER_SQUARE * square;
    }

    /**
     * @param used part of the whole budget that is used, from 0 to 1
     * @return whether an annealing has ended, and another begins
     */
    boolean budgetUsed(double used) {
        budgetUsed = used;
        if (Double.isNaN(usedBefore)) {
            usedBefore = used;
        }
        boolean hasEnded = progress() >= 1 && used < 1;
        if (hasEnded) {
            if (isFirst() && !beginsGently && isPlain) {
                reckon(moves / used);
            }
            int before = tryAt(begun);
            number++;
            length *= GROWTH;
            moves = 0;
            begun = used;
            isAnew = tryAt(used) != before;
            // a short hot one would only lose what was found
            isGentle = goesOn && (isLast() || used / tryPart() - tryAt(used) >= HOT_PART - AGAIN_PART);
        }
        if (hasEnded || isFirst()) {
            budgetMoves = used > usedBefore ? allMoves / (used - usedBefore) : 0;
        }
        return hasEnded;
    }

    /** What a budget of so many moves is used for. */
    private void reckon(double budgetMoves) {
        goesOn = budgetMoves >= LONG_PER_SQUARE * square;
        tries = Math.max(1, (int) ((1 - LAST_PART) * budgetMoves / (TRY_PER_SQUARE * square)));
    }

    /** Part of the budget that each try may use. */
    private double tryPart() {
        return tries > 1 ? (1 - LAST_PART) / tries : 1;
    }

    /** The number of the try to which a part of the budget belongs. */
    private int tryAt(double used) {
        return (int) (used / tryPart() + ROUNDING);
    }

    /** So much work as so many moves. */
    void work(int worth) {
        moves += worth;
        allMoves += worth;
    }

    /** How many moves the whole budget is going to allow, by how many it has allowed until this annealing or during the first. */
    double budgetMoves() {
        return budgetMoves;
    }

    /** How far this annealing is, from 0 to 1. */
    double progress() {
        double end = end();
        double byBudget = begun < end ? (budgetUsed - begun) / (end - begun) : 1;
        return Math.min(1, Math.max(byBudget, moves / longest()));
    }

    /** Moves after which this annealing ends at the latest. */
    private double longest() {
        boolean isBeforeReckoning = isFirst() && isPlain && !beginsGently;
        return isBeforeReckoning ? Math.min(length, FEWEST_MOVES + FIRST_PER_SQUARE * square) : length;
    }

    /** Part of the budget that may be used when this annealing ends. */
    private double end() {
        if (isFirst()) {
            return beginsGently ? GENTLE_PART : FIRST_PART;
        }
        double tryEnd = isLast() ? 1 : (tryAt(begun) + 1) * tryPart();
        if (isGentle) {
            double again = AGAIN_PART * tryPart();
            return begun + again > tryEnd - again / 2 ? tryEnd : begun + again;
        }
        if (!goesOn) {
            return 1;
        }
        boolean beginsTry = begun / tryPart() - tryAt(begun) < FIRST_PART / 2;
        return tryEnd - (1 - (beginsTry ? FIRST_PART : HOT_PART)) * tryPart();
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

    /** Whether this annealing begins a try that has nothing to do with those before. */
    boolean isAnew() {
        return isAnew;
    }

    /** Whether all tries have been made, and the best of them all is gone on from. */
    boolean isLast() {
        return tries > 1 && tryAt(begun) >= tries;
    }

    boolean isFirst() {
        return number == 0;
    }
}
