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

    private double length;
    private double moves;
    private double begun;
    private double budgetUsed;
    private int number;

    Cycle(CompiledProject compiled) {
        length = FEWEST_MOVES + MOVES_PER_SQUARE * compiled.loadCount() * compiled.loadCount();
    }

    /** @param used part of the whole budget that is used, from 0 to 1 */
    void budgetUsed(double used) {
        budgetUsed = used;
        if (progress() >= 1 && used < 1) {
            number++;
            length *= GROWTH;
            moves = 0;
            begun = used;
        }
    }

    void move() {
        moves++;
    }

    /** How far this annealing is, from 0 to 1. */
    double progress() {
        double end = isFirst() ? FIRST_PART : 1;
        double byBudget = begun < end ? (budgetUsed - begun) / (end - begun) : 1;
        return Math.min(1, Math.max(byBudget, moves / length));
    }

    boolean isFirst() {
        return number == 0;
    }
}
